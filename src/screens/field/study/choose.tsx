import type { Words } from "../../../job/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";

interface ChooseProps {
  readonly legend: string;
  readonly of: readonly { readonly id: string; readonly title: Words }[];
  readonly chosen: readonly string[];
  readonly onChoose: (id: string) => void;
}

/** Large keys, one under the other; those that are chosen are pressed. */
export function Choose({ legend, of, chosen, onChoose }: ChooseProps) {
  const { session } = useSpeaking();
  return (
    <fieldset class="study-choose">
      <legend>{legend}</legend>
      <ul class="choices">
        {of.map(({ id, title }) => (
          <li key={id}>
            <button type="button" class="target" aria-pressed={chosen.includes(id)} onClick={() => onChoose(id)}>
              {title[session.language] ?? title.en}
            </button>
          </li>
        ))}
      </ul>
    </fieldset>
  );
}
