// A second mail server for tests/outside/mail.py: the npm package smtp-server, as a script wants it.
//
// usage: mail_server.mjs NPM CERTIFICATE KEY
//
// Prints "port N" once it listens, then one JSON line for each message that it took whole: who it was to and its
// Message-ID. Every seventh recipient is told once to come back later (451), r...@ is refused for good (550), and whoever
// did not sign in as ines with her password is not let in. STARTTLS is offered.
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";

const [npm, certificate, key] = process.argv.slice(2);
const { SMTPServer } = createRequire(resolve(npm, "node_modules", "x"))("smtp-server");
const seen = new Map();

function refusal(code, text) {
  return Object.assign(new Error(text), { responseCode: code });
}

const server = new SMTPServer({
  cert: readFileSync(certificate),
  key: readFileSync(key),
  logger: false,
  onAuth(auth, session, done) {
    const known = auth.username === "ines@example.org" && auth.password === "rosin/and@glue";
    known ? done(null, { user: "ines" }) : done(refusal(535, "5.7.8 That is not the password"));
  },
  onRcptTo({ address }, session, done) {
    const before = seen.get(address) ?? 0;
    seen.set(address, before + 1);
    if (address.startsWith("r")) return done(refusal(550, "5.1.1 No such mailbox"));
    const number = Number(address.match(/^m(\d+)@/)?.[1] ?? 1);
    if (number % 7 === 0 && before === 0) return done(refusal(451, "4.2.1 Come back later"));
    done();
  },
  onData(stream, session, done) {
    const parts = [];
    stream.on("data", (it) => parts.push(it));
    stream.on("end", () => {
      const text = Buffer.concat(parts).toString("latin1");
      const id = text.match(/^Message-ID: (.*)$/im)?.[1].trim();
      const to = session.envelope.rcptTo.map((it) => it.address);
      console.log(JSON.stringify({ id, to, secure: session.secure, text }));
      done(null, "2.0.0 Taken");
    });
  },
});
server.on("error", () => {});
server.listen(0, "127.0.0.1", () => console.log(`port ${server.server.address().port}`));
