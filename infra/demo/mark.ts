/** The invented mark of a company that does not exist: water over a stone's edge into a basin under the ground. */
export const markSvg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 100" width="200" height="100">
  <path fill="#1f4d3a" d="M8 14h78l10 10v12H8z"/>
  <path fill="none" stroke="#0b6572" stroke-width="6" stroke-linecap="round" d="M101 33c12 0 19 12 19 49M101 23c22 0 33 18 33 59M101 13c32 0 47 24 47 69"/>
  <path fill="none" stroke="#1f4d3a" stroke-width="6" stroke-linecap="round" stroke-dasharray="1 12" d="M10 62h80M176 62h18"/>
  <path fill="none" stroke="#1f4d3a" stroke-width="7" stroke-linecap="round" stroke-linejoin="round" d="M104 62v32h60V62"/>
</svg>
`;
