//! The program itself, started as the one who runs the server starts it: on a folder, on
//! loopback, with nothing in the environment but what the test says.

use std::{
    io::{BufRead, BufReader, Read, Write},
    net::{SocketAddr, TcpListener, TcpStream},
    path::Path,
    process::{Child, ChildStdout, Command, Output, Stdio},
    time::{Duration, Instant},
};

/// Longer than any command needs here, even on a machine that is busy.
const PATIENCE: Duration = Duration::from_secs(60);

/// The program with these arguments and settings.
pub fn kinsheaf(arguments: &[&str], settings: &[(&str, &str)]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_kinsheaf"));
    command.args(arguments).env_clear().envs(settings.iter().copied());
    command.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped());
    command
}

/// Runs a command to its end, which must come.
pub fn ran(arguments: &[&str], settings: &[(&str, &str)]) -> Output {
    let mut child = kinsheaf(arguments, settings).spawn().expect("the program starts");
    ended(&mut child);
    child.wait_with_output().expect("its words")
}

fn ended(child: &mut Child) -> Option<i32> {
    let began = Instant::now();
    loop {
        if let Some(status) = child.try_wait().expect("a child") {
            return status.code();
        }
        if began.elapsed() > PATIENCE {
            child.kill().expect("killed");
            panic!("the program did not end");
        }
        std::thread::sleep(Duration::from_millis(20));
    }
}

pub fn said(output: &Output) -> String {
    String::from_utf8_lossy(&output.stdout).into_owned() + &String::from_utf8_lossy(&output.stderr)
}

/// A server that listens; it is ended when it is dropped.
pub struct Server {
    child: Child,
    pub address: SocketAddr,
    /// What it said until it listened.
    pub said: String,
    // Held open: a server that cannot write its words would end.
    _words: BufReader<ChildStdout>,
}

impl Server {
    /// Serves a folder on a free port.
    pub fn start(folder: &Path) -> Server {
        Server::run(&["serve"], folder)
    }

    pub fn run(arguments: &[&str], folder: &Path) -> Server {
        Server::with(arguments, folder, &[])
    }

    /// With more in its environment.
    pub fn with(arguments: &[&str], folder: &Path, more: &[(&str, &str)]) -> Server {
        let free = TcpListener::bind("127.0.0.1:0").expect("a port");
        let address = free.local_addr().expect("an address");
        drop(free);
        let (data, listen) = (folder.display().to_string(), address.to_string());
        let settings = [("KINSHEAF_DATA", data.as_str()), ("KINSHEAF_LISTEN", listen.as_str())];
        let mut command = kinsheaf(arguments, &[&settings[..], more].concat());
        let mut child = command.stderr(Stdio::null()).spawn().expect("the server starts");
        let mut words = BufReader::new(child.stdout.take().expect("its words"));
        let mut said = String::new();
        while !said.contains("Listening on") {
            let more = words.read_line(&mut said).expect("its words");
            assert!(more > 0, "the server did not start: {said}");
        }
        Server { child, address, said, _words: words }
    }

    /// Ends it as a failing machine would.
    pub fn kill(&mut self) {
        self.child.kill().expect("killed");
        self.child.wait().expect("gone");
    }

    /// Tells it to stop, as systemd or `docker stop` does.
    pub fn tell_to_stop(&self) {
        let tell = format!("kill -TERM {}", self.child.id());
        assert!(Command::new("sh").args(["-c", &tell]).status().expect("a shell").success());
    }

    /// Waits for its end; gives its exit code.
    pub fn code(&mut self) -> Option<i32> {
        ended(&mut self.child)
    }

    /// A connection to it, with this sent.
    pub fn send(&self, text: &str) -> TcpStream {
        let mut stream = TcpStream::connect(self.address).expect("a connection");
        stream.set_read_timeout(Some(PATIENCE)).expect("a limit");
        stream.write_all(text.as_bytes()).expect("sent");
        stream
    }

    /// The whole answer to a GET.
    pub fn get(&self, path: &str) -> String {
        let host = self.address;
        read(
            self.send(&format!("GET {path} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n")),
        )
    }
}

/// All that comes until the connection is closed.
pub fn read(mut stream: TcpStream) -> String {
    let mut answer = Vec::new();
    stream.read_to_end(&mut answer).expect("an answer");
    String::from_utf8_lossy(&answer).into_owned()
}

/// Posts one medicine to the first record of a server; whether it was answered as kept.
pub fn add_medicine(at: SocketAddr, cookie: &str, name: &str) -> bool {
    let Ok(mut stream) = TcpStream::connect(at) else { return false };
    let _ = stream.set_read_timeout(Some(Duration::from_secs(10)));
    let body = format!("name={name}&supply=prescription");
    let request = format!(
        "POST /p/1/medicines/add HTTP/1.1\r\nHost: {}\r\nCookie: {cookie}\r\nSec-Fetch-Site: same-origin\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: {}\r\nConnection: close\r\n\r\n{body}",
        at,
        body.len()
    );
    let mut answer = Vec::new();
    let sent = stream.write_all(request.as_bytes());
    sent.is_ok() && stream.read_to_end(&mut answer).is_ok() && answer.starts_with(b"HTTP/1.1 303")
}

impl Drop for Server {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
