//! Serving: one process, one data folder, until it is told to stop.

use super::{Outcome, system_clock};
use crate::{
    across::{papers, reminders, setup},
    app,
    platform::{
        auth::{password::Hasher, throttle::Throttle},
        config::Config,
        db::Db,
        error,
        files::Files,
        house::{House, Parts},
        jobs,
        mail::{Carrier, Post},
        ocr::Ocr,
        pdf::Press,
        words::Shelves,
    },
};
use std::{
    error::Error,
    fs::{self, File, TryLockError},
    net::SocketAddr,
    path::Path,
    process::ExitCode,
    sync::Arc,
};
use tokio::{
    io::{AsyncReadExt, AsyncWriteExt},
    net::{TcpListener, TcpStream},
    signal::unix::{SignalKind, signal},
    sync::watch,
};
use tracing_subscriber::EnvFilter;

/// How long a message on its way may hold up the end.
const GOODBYE: std::time::Duration = std::time::Duration::from_secs(8);

pub async fn serve(config: Config) -> Outcome {
    log("info");
    let _lock = hold(config.data())?;
    let db = Db::open(config.data(), system_clock()).await?;
    if let Some(link) = setup::pages::link(&db, config.base()).await? {
        println!("Nobody signs in here yet. Open this link within 24 hours to begin:\n{link}");
    }
    let carrier = Carrier::of(&config)?;
    let listener = TcpListener::bind(config.listen())
        .await
        .map_err(|e| format!("KINSHEAF_LISTEN: {} cannot be listened on: {e}", config.listen()))?;
    println!("Listening on {}", config.base().absolute("/"));
    let mails = carrier.leaves();
    let files = Files::under(config.data());
    run(house((db, files), config, (carrier, mails), false), listener).await
}

/// Everything a request is served with; the photos lie beside the database.
pub fn house(
    (db, files): (Db, Files),
    config: Config,
    (carrier, mails): (Carrier, bool),
    demo: bool,
) -> House {
    files.clear_away();
    House::new(Parts {
        db,
        files,
        clock: system_clock(),
        config,
        hasher: Hasher::new(),
        throttle: Throttle::new(),
        press: Press::new(),
        ocr: Ocr::on(std::env::var_os("PATH").unwrap_or_default()),
        constraints: app::constraints(),
        shelves: Shelves::default(),
        carrier,
        mails,
        demo,
    })
}

/// Serves until SIGTERM or Ctrl-C; requests that have begun are finished first.
pub async fn run(house: House, listener: TcpListener) -> Outcome {
    let (tell, stop) = watch::channel(false);
    let post = Post::new(house.db.clone(), house.carrier.clone());
    let carrying = tokio::spawn(post.clone().carry(stop.clone()));
    let own = house.clone();
    let work = move || work(own.clone(), post.clone());
    let planning = tokio::spawn(jobs::every_minute("reminders", stop.clone(), work));
    let own = house.clone();
    let read = move || read(own.clone());
    let reading = tokio::spawn(jobs::every_minute("papers", stop, read));
    let app = app::app(house.clone()).into_make_service_with_connect_info::<SocketAddr>();
    axum::serve(listener, app).with_graceful_shutdown(told_to_stop()).await?;
    // A message that is on its way is waited for a little: cut off, it would be sent again.
    let _ = tell.send(true);
    // A paper that is being read is not: it waits in its queue for the next start.
    house.ocr.end();
    let ends = [carrying.abort_handle(), planning.abort_handle(), reading.abort_handle()];
    let all = async { (carrying.await, planning.await, reading.await) };
    if tokio::time::timeout(GOODBYE, all).await.is_err() {
        ends.iter().for_each(|it| it.abort());
    }
    house.db.close().await;
    Ok(ExitCode::SUCCESS)
}

/// What is done every minute: what has become due is put into the outbox.
async fn work(house: House, post: Arc<Post>) -> error::Result<()> {
    reminders::plan(&house.db, house.config.base(), house.clock.now()).await?;
    post.forget().await
}

/// Also every minute, beside it: papers take longer than reminders may wait. What they look like comes after
/// their words, which say more.
async fn read(house: House) -> error::Result<()> {
    if let Err(e) = house.files.give_up_old(house.clock.now()) {
        tracing::warn!(error = %e, "what nobody went on sending was not given up");
    }
    let words = papers::words::job::work(&house).await;
    papers::alike::job::work(&house).await?;
    words
}

async fn told_to_stop() {
    let mut term = signal(SignalKind::terminate()).expect("signals can be listened to");
    tokio::select! {
        _ = term.recv() => {}
        _ = tokio::signal::ctrl_c() => {}
    }
}

/// Makes the data folder, readable by its owner only, and holds it: one server a folder.
pub fn hold(folder: &Path) -> Result<File, Box<dyn Error + Send + Sync>> {
    let cannot = |e| format!("The data folder {} cannot be used: {e}", folder.display());
    fs::create_dir_all(folder).map_err(cannot)?;
    use std::os::unix::fs::PermissionsExt;
    // A folder of someone else's (a mounted volume) keeps its own rights.
    let _ = fs::set_permissions(folder, fs::Permissions::from_mode(0o700));
    let lock = File::create(folder.join("serving.lock")).map_err(cannot)?;
    match lock.try_lock() {
        Ok(()) => Ok(lock),
        Err(TryLockError::WouldBlock) => {
            Err(format!("Another server is using the data folder {}.", folder.display()).into())
        }
        Err(TryLockError::Error(e)) => Err(cannot(e).into()),
    }
}

/// Logs go to standard error; `RUST_LOG` says how much.
pub fn log(level: &str) {
    let filter = EnvFilter::try_from_default_env().unwrap_or_else(|_| EnvFilter::new(level));
    let _ =
        tracing_subscriber::fmt().with_env_filter(filter).with_writer(std::io::stderr).try_init();
}

/// Asks `/healthz` of the server these settings describe.
pub async fn healthcheck(config: &Config) -> Outcome {
    let mut address = config.listen();
    if address.ip().is_unspecified() {
        let local = if address.is_ipv4() { "127.0.0.1" } else { "::1" };
        address.set_ip(local.parse()?);
    }
    let asked = tokio::time::timeout(std::time::Duration::from_secs(3), async {
        let mut stream = TcpStream::connect(address).await?;
        let path = format!("{}/healthz", config.base().path());
        let request =
            format!("GET {path} HTTP/1.1\r\nHost: {address}\r\nConnection: close\r\n\r\n");
        stream.write_all(request.as_bytes()).await?;
        let mut answer = Vec::new();
        stream.take(1024).read_to_end(&mut answer).await?;
        std::io::Result::Ok(answer)
    });
    match asked.await {
        Ok(Ok(answer)) if answer.starts_with(b"HTTP/1.1 200") => Ok(super::print("well")),
        Ok(Err(e)) => Err(format!("The server at {address} does not answer: {e}").into()),
        _ => Err(format!("The server at {address} is not well.").into()),
    }
}
