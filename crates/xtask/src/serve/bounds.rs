//! What keeps the server going whatever is done to it: so many connections, so long for each, and no more lines than a person reads.

use std::io::{self, ErrorKind, Read, Write};
use std::net::TcpStream;
use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

/// How much is borne.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bounds {
    /// So many connections at once; further ones wait.
    pub(super) connections: usize,
    /// How long a request may take, from the moment its connection is there: a browser opens some in advance.
    pub(super) request: Duration,
    /// How long an answer may take until all of it is sent.
    pub(super) answer: Duration,
}

/// A phone opens six at once, and on a weak signal takes minutes for the page in one file.
pub(super) const BOUNDS: Bounds =
    Bounds { connections: 200, request: Duration::from_mins(1), answer: Duration::from_mins(10) };

/// Places that are taken and given back.
#[derive(Debug)]
pub(super) struct Places {
    free: Mutex<usize>,
    given_back: Condvar,
}

impl Places {
    pub(super) fn new(count: usize) -> Self {
        Self { free: Mutex::new(count), given_back: Condvar::new() }
    }

    /// Takes one, once one is free; it is given back when it is dropped.
    pub(super) fn take(&self) -> Place<'_> {
        let free = self.given_back.wait_while(self.free(), |free| *free == 0);
        *free.unwrap_or_else(PoisonError::into_inner) -= 1;
        Place(self)
    }

    fn free(&self) -> MutexGuard<'_, usize> {
        // a number is whole, whoever left it
        self.free.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// One that was taken.
#[derive(Debug)]
pub(super) struct Place<'a>(&'a Places);

impl Drop for Place<'_> {
    fn drop(&mut self) {
        *self.0.free() += 1;
        self.0.given_back.notify_one();
    }
}

/// A connection that may be used until then, however its bytes are spread over the time.
#[derive(Debug)]
pub(super) struct Until<'a> {
    pub(super) stream: &'a TcpStream,
    pub(super) end: Instant,
}

impl Until<'_> {
    fn left(&self) -> io::Result<Duration> {
        let left = self.end.saturating_duration_since(Instant::now());
        if left.is_zero() { Err(ErrorKind::TimedOut.into()) } else { Ok(left) }
    }
}

impl Read for Until<'_> {
    fn read(&mut self, bytes: &mut [u8]) -> io::Result<usize> {
        self.stream.set_read_timeout(Some(self.left()?))?;
        self.stream.read(bytes)
    }
}

impl Write for Until<'_> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.stream.set_write_timeout(Some(self.left()?))?;
        self.stream.write(bytes)
    }
    fn flush(&mut self) -> io::Result<()> {
        self.stream.flush()
    }
}

/// How long to wait after so many connections in a row could not be taken: out of files, trying again at once only burns.
pub(super) fn pause(failures: u32) -> Duration {
    Duration::from_millis(10 << failures.min(8))
}

/// Says no more than a line in so long.
#[derive(Debug)]
pub(super) struct Teller {
    last: Mutex<Option<Instant>>,
}

impl Teller {
    const EVERY: Duration = Duration::from_secs(1);

    pub(super) const fn new() -> Self {
        Self { last: Mutex::new(None) }
    }

    /// Whether something may be said now.
    pub(super) fn may_tell(&self, now: Instant) -> bool {
        let mut last = self.last.lock().unwrap_or_else(PoisonError::into_inner);
        let may = last.is_none_or(|last| now.saturating_duration_since(last) >= Self::EVERY);
        if may {
            *last = Some(now);
        }
        may
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::mpsc;
    use std::thread;

    #[test]
    fn no_more_places_are_taken_than_there_are() {
        let places = Places::new(2);
        let (first, _second) = (places.take(), places.take());
        thread::scope(|scope| {
            let (tell, told) = mpsc::channel();
            let places = &places;
            scope.spawn(move || {
                let _third = places.take();
                tell.send(()).unwrap();
            });
            let early = told.recv_timeout(Duration::from_millis(50));
            assert!(early.is_err(), "a third was taken");
            drop(first);
            told.recv().unwrap();
        });
    }

    #[test]
    fn the_longer_it_fails_the_longer_it_waits_but_for_seconds_at_most() {
        assert!(pause(0) < pause(3) && pause(3) < pause(8), "it waits longer");
        assert_eq!(pause(8), pause(u32::MAX));
        assert!(pause(8) < Duration::from_secs(5), "somebody waits for the page");
    }

    #[test]
    fn a_line_is_told_once_a_second() {
        let (teller, now) = (Teller::new(), Instant::now());
        let told = (0..2500).filter(|at| teller.may_tell(now + Duration::from_millis(*at)));
        assert_eq!(told.count(), 3);
    }
}
