//! The page's entry.

fn main() {
    quietpin_web::start();
}
