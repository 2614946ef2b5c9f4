//! The commands: serve a family, try the demo, and what the one who runs the server needs.
//!
//! Exit codes: 0 it worked; 1 it did not; 2 the settings or the command are wrong.

mod backup;
mod demo;
pub mod import_names;
mod mail;
mod member;
mod remind;
mod restore;
mod serve;
pub mod story;
mod verify;

use crate::base::clock::{Clock, Instant};
use crate::platform::{
    config::{Config, ConfigProblems},
    db::Db,
};
use clap::{Parser, Subcommand};
use std::{error::Error, path::PathBuf, process::ExitCode};

#[derive(Parser)]
#[command(name = "kinsheaf", version, about = "One care record that a family shares")]
struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    /// Serve a family's records from the data folder
    Serve,
    /// Serve an invented family, to look around
    Demo {
        /// A folder that an earlier demo made; a fresh one otherwise
        #[arg(long)]
        data: Option<PathBuf>,
        /// In a fresh folder: so many years before the ordinary month, to see a record that is long
        #[arg(long, value_parser = clap::value_parser!(u8).range(1..=20))]
        years: Option<u8>,
    },
    /// Something about one member
    #[command(subcommand)]
    Member(MemberCommand),
    /// Print what would be mailed to whom at a moment, and put it into the outbox
    Remind {
        /// The moment, such as 2026-12-01T15:00:00Z; now, if it is left out
        #[arg(long, value_name = "INSTANT")]
        at: Option<String>,
        /// Only print it
        #[arg(long)]
        dry_run: bool,
    },
    /// Something about mail
    #[command(subcommand)]
    Mail(MailCommand),
    /// Look through the whole history: was anything changed behind its back?
    Verify {
        /// The history mark of a printed sheet: everything up to it must still be there
        #[arg(long)]
        head: Option<String>,
    },
    /// Put a copy of everything into one file, also while the server runs
    Backup {
        /// The file to make; it must not be there yet
        file: PathBuf,
    },
    /// Put what is in a backup into a new or an empty folder
    Restore {
        /// A file that `backup` made
        file: PathBuf,
        /// The folder to make
        #[arg(long, value_name = "DIR")]
        data: PathBuf,
        /// Restore a record that is not sound as well; the history tells that it was
        #[arg(long)]
        even_if_unsound: bool,
    },
    /// Bring in names of medicines, to complete what is typed: RxNorm's RXNCONSO.RRF
    ImportNames {
        /// The file; names of an earlier import are replaced
        file: PathBuf,
    },
    /// Show the settings, with secrets masked
    Config,
    /// Ask the running server whether it is well
    Healthcheck,
}

#[derive(Subcommand)]
enum MemberCommand {
    /// Make a link with which a member chooses a new password
    Reset {
        /// The address the member signs in with
        email: String,
    },
}

#[derive(Subcommand)]
enum MailCommand {
    /// Send a test mail, and show the mail server's own answer
    Test {
        /// Where to
        address: String,
    },
}

/// What a command can fail with; its text is for the one at the command line.
type Outcome = Result<ExitCode, Box<dyn Error + Send + Sync>>;

pub async fn run() -> ExitCode {
    let command = Arguments::parse().command;
    let config = match settings() {
        Ok(config) => config,
        Err(problems) => {
            eprintln!("{problems}");
            return ExitCode::from(2);
        }
    };
    let outcome = match command {
        Command::Serve => serve::serve(config).await,
        Command::Demo { data, years } => demo::demo(config, data, years).await,
        Command::Member(MemberCommand::Reset { email }) => member::reset(config, &email).await,
        Command::Remind { at, dry_run } => remind::remind(config, at, dry_run).await,
        Command::Mail(MailCommand::Test { address }) => mail::test(config, &address).await,
        Command::Verify { head } => verify::verify(config, head).await,
        Command::Backup { file } => backup::backup(config, &file).await,
        Command::Restore { file, data, even_if_unsound } => {
            restore::restore(&file, &data, even_if_unsound).await
        }
        Command::ImportNames { file } => import_names::import_names(config, &file).await,
        Command::Config => Ok(print(&config.shown())),
        Command::Healthcheck => serve::healthcheck(&config).await,
    };
    outcome.unwrap_or_else(|e| {
        eprintln!("{e}");
        ExitCode::FAILURE
    })
}

fn settings() -> Result<Config, ConfigProblems> {
    let text = |name: &str| std::env::var(name).ok();
    Config::read(text, |path| std::fs::read_to_string(path))
}

fn print(text: &str) -> ExitCode {
    println!("{text}");
    ExitCode::SUCCESS
}

/// The clock of the machine: the one place where it is read.
fn system_clock() -> Clock {
    Clock::new(|| Instant::new(time::OffsetDateTime::now_utc()))
}

/// The database beside a running server.
async fn database(config: &Config) -> Result<Db, crate::platform::db::OpenError> {
    Db::open_as_is(config.data(), system_clock()).await
}
