//! `kinsheaf demo`: an invented family to look around in. Loopback only, mail into files.

use super::{
    Outcome, serve,
    story::{self, StoryClock},
    system_clock,
};
use crate::platform::{
    auth::links::{self, Purpose},
    config::Config,
    db::Db,
    files::Files,
    mail::Carrier,
};
use std::{
    fs,
    path::{Path, PathBuf},
};
use tokio::net::TcpListener;

/// Marks a folder that a demo made, so that no family's folder is taken for one.
const MARK: &str = "made-by-demo";

pub async fn demo(config: Config, data: Option<PathBuf>, years: Option<u8>) -> Outcome {
    serve::log("warn");
    if !config.listen().ip().is_loopback() {
        return Err("The demo lets anyone with its links in, so it listens on loopback only. Take KINSHEAF_LISTEN away, or use `serve`.".into());
    }
    let folder = folder(data)?;
    let _lock = serve::hold(&folder)?;
    let files = Files::under(&folder);
    if !folder.join("kinsheaf.db").exists() {
        let clock = StoryClock::new(system_clock().now());
        let db = Db::open(&folder, clock.clock()).await?;
        let told = story::tell((&db, &files), &clock, years.unwrap_or(0)).await?;
        if years.is_some() {
            println!("{told}");
        }
        db.close().await;
        fs::write(folder.join(MARK), "An invented family. Nothing here is anyone's.\n")?;
    }
    let db = Db::open(&folder, system_clock()).await?;
    let listener = TcpListener::bind(config.listen()).await?;
    let config = config.listening_on(listener.local_addr()?);
    links::forget(&db, Purpose::Demo).await?;
    for (member, name, role) in story::cast(&db).await? {
        let lasts = time::Duration::days(30);
        let token = links::make(&db, Purpose::Demo, Some(member), lasts).await?;
        let link = config.base().absolute(&format!("/sign-in/demo/{token}"));
        println!("{name} ({}): {link}", role.name());
    }
    println!("Data: {}", folder.display());
    println!("Listening on {}", config.base().absolute("/"));
    let carrier = Carrier::into_files(&folder);
    serve::run(serve::house((db, files), config, (carrier, true), true), listener).await
}

/// A fresh folder, or one that a demo made.
fn folder(named: Option<PathBuf>) -> Result<PathBuf, Box<dyn std::error::Error + Send + Sync>> {
    let Some(folder) = named else {
        let name = format!("kinsheaf-demo-{}", crate::platform::random::hex(4));
        return Ok(std::env::temp_dir().join(name));
    };
    let fresh = !folder.exists() || is_empty(&folder)?;
    if !fresh && !folder.join(MARK).exists() {
        return Err(
            format!("{} was not made by a demo, so it is left alone.", folder.display()).into()
        );
    }
    Ok(folder)
}

fn is_empty(folder: &Path) -> std::io::Result<bool> {
    Ok(fs::read_dir(folder)?.next().is_none())
}
