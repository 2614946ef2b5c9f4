//! A new migration file alone rebuilds nothing: `migrate!` reads the folder when it compiles.
fn main() {
    println!("cargo:rerun-if-changed=migrations");
    println!("cargo:rerun-if-changed=templates");
}
