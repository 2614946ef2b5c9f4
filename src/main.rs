//! Parse the command, run it, give its exit code.

use std::process::ExitCode;

#[tokio::main]
async fn main() -> ExitCode {
    kinsheaf::cli::run().await
}
