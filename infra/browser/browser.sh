#!/bin/sh
# Starts the browser named in BROWSER_COMMAND so that it ends with the process that started it, and notes that it ran.
if [ -n "${ASBURIED_PROCESS_LOG:-}" ]; then printf '{"name":"browser","pid":%d}\n' "$$" >>"$ASBURIED_PROCESS_LOG"; fi
if [ -n "${BROWSER_LIBRARY_PATH:-}" ]; then set -- "LD_LIBRARY_PATH=$BROWSER_LIBRARY_PATH" "$BROWSER_COMMAND" "$@"; else set -- "$BROWSER_COMMAND" "$@"; fi
if [ -n "${BROWSER_FONTCONFIG_PATH:-}" ]; then FONTCONFIG_PATH=$BROWSER_FONTCONFIG_PATH; export FONTCONFIG_PATH; fi
unset LD_LIBRARY_PATH
if command -v setpriv >/dev/null 2>&1 && setpriv --help 2>/dev/null | grep -q pdeathsig; then exec setpriv --pdeathsig KILL -- env "$@"; fi
exec env "$@"
