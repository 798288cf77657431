#!/usr/bin/env bash
# Starts OpenStack Swift with its S3 interface from Debian's packages, one device, everything in one folder, until it is told to
# end. Inside a system that has swift-proxy, swift-account, swift-container, swift-object and memcached.
#   swift.sh FOLDER PORT SECRET
set -euo pipefail
folder=${1:?folder} port=${2:?port} secret=${3:?secret}
export PATH=$PATH:/usr/sbin
[ -e /proc/self/fd ] || { echo "Swift needs /proc here: without it an upload is answered with yes and not kept" >&2; exit 1; }
rm -rf "$folder"
mkdir -p "$folder"/{node/d1,run,recon,rings} /etc/swift
cd "$folder/rings"
for one in account:$((port + 3)) container:$((port + 2)) object:$((port + 1)); do
  kind=${one%%:*}
  swift-ring-builder "$kind.builder" create 6 1 0 >/dev/null
  swift-ring-builder "$kind.builder" add "r1z1-127.0.0.1:${one##*:}/d1" 100 >/dev/null
  swift-ring-builder "$kind.builder" rebalance >/dev/null
  cp "$kind.ring.gz" /etc/swift/
  cat >"$folder/$kind.conf" <<END
[DEFAULT]
bind_ip = 127.0.0.1
bind_port = ${one##*:}
user = root
devices = $folder/node
mount_check = false
workers = 0
[pipeline:main]
pipeline = $kind-server
[app:$kind-server]
use = egg:swift#$kind
END
done
cat >/etc/swift/swift.conf <<END
[swift-hash]
swift_hash_path_prefix = $RANDOM$RANDOM
swift_hash_path_suffix = $RANDOM$RANDOM
END
cat >"$folder/proxy.conf" <<END
[DEFAULT]
bind_ip = 127.0.0.1
bind_port = $port
user = root
workers = 0
[pipeline:main]
pipeline = catch_errors cache s3api tempauth copy slo proxy-server
[app:proxy-server]
use = egg:swift#proxy
allow_account_management = true
account_autocreate = true
[filter:catch_errors]
use = egg:swift#catch_errors
[filter:cache]
use = egg:swift#memcache
memcache_servers = 127.0.0.1:$((port + 4))
[filter:s3api]
use = egg:swift#s3api
location = auto
[filter:tempauth]
use = egg:swift#tempauth
user_local_store = $secret .admin
[filter:copy]
use = egg:swift#copy
[filter:slo]
use = egg:swift#slo
END
children=()
end() {
  kill "${children[@]}" 2>/dev/null || true
  wait 2>/dev/null || true
}
trap end EXIT
trap 'exit 0' TERM INT
memcached -u root -l 127.0.0.1 -p $((port + 4)) &
children+=($!)
for kind in account container object; do
  "swift-$kind-server" "$folder/$kind.conf" -v >>"$folder/log" 2>&1 &
  children+=($!)
done
swift-proxy-server "$folder/proxy.conf" -v >>"$folder/log" 2>&1 &
children+=($!)
# the end of standard input is the end of it, however that came
cat >/dev/null || true
