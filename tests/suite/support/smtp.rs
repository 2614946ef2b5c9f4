//! A mail server on loopback that answers as a script says, so that each trouble comes when the
//! test wants it. Other people's servers are in `tests/outside/mail.py`.

use std::{
    collections::{HashMap, HashSet},
    sync::{Arc, Mutex},
};
use tokio::{
    io::{AsyncBufReadExt, AsyncWriteExt, BufReader},
    net::{TcpListener, TcpStream},
};

/// What is said to one step of a message: the reply, or (`None`) the connection is closed.
pub type Script = Arc<dyn Fn(Step, &str, usize) -> Option<&'static str> + Send + Sync>;

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Step {
    Mail,
    Recipient,
    /// After the final dot.
    Dot,
}

pub struct MailServer {
    pub url: String,
    /// Each message that came whole and was taken: its recipient and its text.
    taken: Arc<Mutex<Vec<(String, String)>>>,
}

#[derive(Default)]
struct Seen(HashMap<(Step, String), usize>);

impl MailServer {
    /// Takes everything.
    pub async fn kind() -> MailServer {
        MailServer::scripted(|_, _, _| Some("250 2.0.0 Taken")).await
    }

    /// `script` is told the step, the recipient, and how often she was at that step before.
    pub async fn scripted(
        script: impl Fn(Step, &str, usize) -> Option<&'static str> + Send + Sync + 'static,
    ) -> MailServer {
        let listener = TcpListener::bind("127.0.0.1:0").await.expect("a port");
        let address = listener.local_addr().expect("an address");
        let taken = Arc::new(Mutex::new(Vec::new()));
        let (script, seen): (Script, _) = (Arc::new(script), Arc::new(Mutex::new(Seen::default())));
        let all = taken.clone();
        tokio::spawn(async move {
            while let Ok((stream, _)) = listener.accept().await {
                let (script, seen, all) = (script.clone(), seen.clone(), all.clone());
                tokio::spawn(async move { talk(stream, script, seen, all).await });
            }
        });
        MailServer { url: format!("smtp://{address}"), taken }
    }

    pub fn taken(&self) -> Vec<(String, String)> {
        self.taken.lock().expect("no panic").clone()
    }

    /// The Message-IDs of what was taken.
    pub fn ids(&self) -> Vec<String> {
        let id = |text: &str| {
            let line = text.lines().find(|it| it.starts_with("Message-ID: "));
            line.expect("a Message-ID").to_owned()
        };
        self.taken().iter().map(|(_, text)| id(text)).collect()
    }

    /// How many of these differ.
    pub fn distinct(&self) -> usize {
        self.ids().into_iter().collect::<HashSet<_>>().len()
    }
}

async fn talk(
    stream: TcpStream,
    script: Script,
    seen: Arc<Mutex<Seen>>,
    all: Arc<Mutex<Vec<(String, String)>>>,
) -> Option<()> {
    let mut stream = BufReader::new(stream);
    let asked = |step: Step, whom: &str| {
        let mut seen = seen.lock().expect("no panic");
        let before = seen.0.entry((step, whom.to_owned())).or_insert(0);
        *before += 1;
        script(step, whom, *before - 1)
    };
    let mut whom = String::new();
    say(&mut stream, "220 mail.example.org ready").await?;
    loop {
        let line = heard(&mut stream).await?;
        let verb = line.get(..4).unwrap_or_default().to_ascii_uppercase();
        let reply = match verb.as_str() {
            "EHLO" => Some("250 mail.example.org"),
            "MAIL" => asked(Step::Mail, ""),
            "RCPT" => {
                whom = line.split(['<', '>']).nth(1).unwrap_or_default().to_owned();
                asked(Step::Recipient, &whom)
            }
            "DATA" => {
                say(&mut stream, "354 Go on").await?;
                let mut text = String::new();
                loop {
                    match heard(&mut stream).await? {
                        it if it == "." => break,
                        it => text.push_str(&format!("{it}\n")),
                    }
                }
                let reply = asked(Step::Dot, &whom);
                if reply.is_none_or(|it| it.starts_with('2')) {
                    all.lock().expect("no panic").push((whom.clone(), text));
                }
                reply
            }
            "QUIT" => {
                say(&mut stream, "221 Bye").await?;
                return None;
            }
            _ => Some("250 OK"),
        };
        say(&mut stream, reply?).await?;
    }
}

async fn say(stream: &mut BufReader<TcpStream>, line: &str) -> Option<()> {
    stream.get_mut().write_all(format!("{line}\r\n").as_bytes()).await.ok()
}

async fn heard(stream: &mut BufReader<TcpStream>) -> Option<String> {
    let mut line = String::new();
    let read = stream.read_line(&mut line).await.ok()?;
    (read > 0).then(|| line.trim_end_matches(['\r', '\n']).to_owned())
}
