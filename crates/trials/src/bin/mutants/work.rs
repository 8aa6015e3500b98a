//! Work that is shared among as many as the machine has processors.

use std::{
    sync::atomic::{AtomicUsize, Ordering::Relaxed},
    thread,
};

/// Does each piece once; each worker knows its own number.
pub(crate) fn share(pieces: usize, work: impl Fn(usize, usize) + Sync) {
    let next = AtomicUsize::new(0);
    let workers = thread::available_parallelism().map_or(1, usize::from);
    let (next, work) = (&next, &work);
    thread::scope(|scope| {
        for worker in 0..workers {
            scope.spawn(move || {
                loop {
                    let piece = next.fetch_add(1, Relaxed);
                    if piece >= pieces {
                        break;
                    }
                    work(worker, piece);
                }
            });
        }
    });
}
