//! Prints the JSON Schema of the saved files: `cargo run -p standfast-core --features schema --example schema`.

fn main() {
    print!("{}", standfast_core::schema::text());
}
