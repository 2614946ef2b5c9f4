//! Sign-in and leave: who is asking, for whose record, and what the role allows.
//!
//! The doors, each a proof in a type: [`grant::Grant`] (a member of this record, in a role that
//! reaches the area), [`doors::Account`] (signed in, no record yet), [`doors::Visitor`] (not
//! signed in), [`doors::Operator`] (at the command line), [`job::Job`] (the house by itself).
//!
//! What does not compile, each beside the same line as it must be:
//!
//! Who may only see does not write.
//! ```no_run
//! # use kinsheaf::platform::{auth::{area::*, grant::*}, db::Write, error::Result};
//! async fn write(grant: Grant<Change<Clinical>>) -> Result<Write<Clinical>> {
//!     grant.write().await
//! }
//! ```
//! ```compile_fail,E0599
//! # use kinsheaf::platform::{auth::{area::*, grant::*}, db::Write, error::Result};
//! async fn write(grant: Grant<See<Clinical>>) -> Result<Write<Clinical>> {
//!     grant.write().await
//! }
//! ```
//! A grant is not made by hand, not even from another.
//! ```no_run
//! # use kinsheaf::platform::auth::{area::*, grant::*};
//! fn passed_on(grant: Grant<See<Clinical>>) -> Grant<See<Clinical>> {
//!     Grant::from(grant)
//! }
//! ```
//! ```compile_fail,E0451
//! # use kinsheaf::platform::auth::{area::*, grant::*};
//! fn passed_on(grant: Grant<See<Clinical>>) -> Grant<See<Clinical>> {
//!     Grant { ..grant }
//! }
//! ```
//! "Stopped" is not said of what was not kept: an answer is made from a commit only.
//! ```no_run
//! # use kinsheaf::platform::{auth::area::*, db::{Committed, Done, Write}, web::urls};
//! async fn stop(write: Write<Clinical>) -> Done {
//!     let kept: Committed = write.commit().await?;
//!     kept.then(urls::medicines()).saying("Stopped")
//! }
//! ```
//! ```compile_fail,E0451
//! # use kinsheaf::platform::{auth::area::*, db::{Committed, Done, Write}, web::urls};
//! async fn stop(write: Write<Clinical>) -> Done {
//!     let kept: Committed = Committed { person: write.person() };
//!     kept.then(urls::medicines()).saying("Stopped")
//! }
//! ```
//! What a write has kept it does not change afterwards.
//! ```no_run
//! # use kinsheaf::platform::{auth::area::*, db::Write, error::Result};
//! async fn twice(mut write: Write<Clinical>) -> Result<()> {
//!     write.did("looked at", "medicine", 1).await?;
//!     write.commit().await.map(|_| ())
//! }
//! ```
//! ```compile_fail,E0382
//! # use kinsheaf::platform::{auth::area::*, db::Write, error::Result};
//! async fn twice(mut write: Write<Clinical>) -> Result<()> {
//!     write.commit().await?;
//!     write.commit().await.map(|_| ())
//! }
//! ```
//! The store of one area does not take the view of another.
//! ```no_run
//! # use kinsheaf::{platform::{auth::area::*, db::View, error::Result}, record::medicines::{model::Medicine, store}};
//! async fn medicines(view: View<Clinical>) -> Result<Vec<Medicine>> {
//!     store::list(&view).await
//! }
//! ```
//! ```compile_fail,E0308
//! # use kinsheaf::{platform::{auth::area::*, db::View, error::Result}, record::medicines::{model::Medicine, store}};
//! async fn medicines(view: View<Members>) -> Result<Vec<Medicine>> {
//!     store::list(&view).await
//! }
//! ```

pub mod area;
pub mod doors;
mod entering;
pub mod grant;
pub mod job;
pub mod links;
pub mod lowered;
pub mod password;
pub mod policy;
pub mod session;
pub mod shared;
pub mod throttle;
pub mod voice;
