#!/bin/sh
# Starts workerd so that it ends with the process that started it, and notes its process id. `exec` keeps the id.
if [ -n "${WORKERD_PID_FILE:-}" ]; then printf '%d\n' "$$" >"$WORKERD_PID_FILE"; fi
if [ -n "${ASBURIED_PROCESS_LOG:-}" ]; then printf '{"name":"workerd","pid":%d}\n' "$$" >>"$ASBURIED_PROCESS_LOG"; fi
# a file that may grow no more is an error that the database tells, not a signal that ends everything
trap '' XFSZ
if command -v setpriv >/dev/null 2>&1 && setpriv --help 2>/dev/null | grep -q pdeathsig; then exec setpriv --pdeathsig KILL -- "$WORKERD_COMMAND" "$@"; fi
exec "$WORKERD_COMMAND" "$@"
