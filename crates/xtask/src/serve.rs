//! A small web server for the built page: this machine, or the phones in the same workshop.

mod bounds;
mod files;
mod http;

use crate::arguments::{Serve, Source};
use crate::{build, folders, shell};
use anyhow::{Context, Result};
use bounds::{BOUNDS, Bounds, Places, Teller, Until, pause};
use http::{Request, Response};
use std::borrow::Cow;
use std::fs;
use std::io::{self, Write};
use std::net::{IpAddr, Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::Path;
use std::thread;
use std::time::{Duration, Instant};

/// Serves until it is interrupted.
pub(crate) fn serve(how: &Serve) -> Result<()> {
    let folder = match &how.source {
        Source::NewBuild => {
            build::build()?;
            folders::dist()
        }
        Source::LastBuild => folders::dist(),
        Source::Folder(folder) => folder.clone(),
    };
    let folder =
        folder.canonicalize().with_context(|| format!("{} is not there", folder.display()))?;
    let listener = listen(how)?;
    announce(how.lan, listener.local_addr().context("the server has no port")?.port());
    serve_from(listener.incoming(), &folder, BOUNDS, thread::sleep);
    Ok(())
}

/// Answers every connection in a thread of its own: a browser may leave one unused, or an answer unread, for as long as
/// it likes; the others must not wait for it.
///
/// Where none can be taken, `wait` waits, longer each time, and it is said once.
fn serve_from(
    connections: impl Iterator<Item = io::Result<TcpStream>>,
    folder: &Path,
    bounds: Bounds,
    wait: impl Fn(Duration),
) {
    let (places, teller) = (Places::new(bounds.connections), Teller::new());
    let (places, teller) = (&places, &teller);
    let mut failures = 0;
    thread::scope(|scope| {
        for connection in connections {
            let connection = match connection {
                Ok(connection) => connection,
                Err(error) => {
                    if failures == 0 {
                        shell::say(&format!("A connection could not be taken: {error}."));
                    }
                    wait(pause(failures));
                    failures += 1;
                    continue;
                }
            };
            failures = 0;
            let place = places.take();
            scope.spawn(move || {
                // A phone that walked out of reach is no reason to stop.
                let answered = respond(&connection, folder, bounds);
                if let Err(error) = answered.as_ref()
                    && teller.may_tell(Instant::now())
                {
                    shell::say(&format!("An answer did not arrive: {error}."));
                }
                drop((connection, place));
            });
        }
    });
}

fn listen(how: &Serve) -> Result<TcpListener> {
    let host = if how.lan { Ipv4Addr::UNSPECIFIED } else { Ipv4Addr::LOCALHOST };
    TcpListener::bind(SocketAddr::from((host, how.port)))
        .with_context(|| format!("cannot listen on port {}; `--port 0` takes a free one", how.port))
}

fn announce(lan: bool, port: u16) {
    shell::heading("Serving");
    shell::say(&format!("On this machine: http://127.0.0.1:{port}/"));
    if lan {
        announce_lan(port);
    }
    shell::say("Ctrl+C ends it.");
    // Whoever reads the address from a pipe waits for it.
    let _ = io::stdout().flush();
}

fn announce_lan(port: u16) {
    let addresses = lan_addresses();
    if addresses.is_empty() {
        shell::say("This machine has no address on a network.");
        return;
    }
    for address in &addresses {
        shell::say(&format!("On the network:  http://{address}:{port}/"));
    }
    shell::say(
        "Without HTTPS a phone does not keep the page for use with no network. For that, save this file on it:",
    );
    for address in &addresses {
        shell::say(&format!("                 http://{address}:{port}/{}?save", build::SINGLE));
    }
    shell::say(
        "Anybody on the network can open the page; plans stay in each browser and are not sent here.",
    );
}

fn lan_addresses() -> Vec<IpAddr> {
    let interfaces = if_addrs::get_if_addrs().unwrap_or_default();
    let outside = interfaces.iter().filter(|interface| !interface.is_loopback());
    outside.map(if_addrs::Interface::ip).filter(IpAddr::is_ipv4).collect()
}

fn respond(stream: &TcpStream, folder: &Path, bounds: Bounds) -> io::Result<()> {
    let reading = Until { stream, end: Instant::now() + bounds.request };
    let Some(request) = Request::read(reading) else { return Ok(()) };
    let mut writing = Until { stream, end: Instant::now() + bounds.answer };
    answer(&request, folder).send(&mut writing, request.method == "HEAD")
}

fn answer(request: &Request, folder: &Path) -> Response {
    if !matches!(request.method.as_str(), "GET" | "HEAD") {
        return refusal("405 Method Not Allowed", "Only GET and HEAD.");
    }
    let Some(path) = files::locate(folder, &request.url) else {
        return refusal("404 Not Found", "There is no such file.");
    };
    let Ok(body) = fs::read(&path) else {
        return refusal("500 Internal Server Error", "The file could not be read.");
    };
    let mut headers = vec![("Content-Type", files::media_type(&path).into())];
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    if name == build::SINGLE && request.url.ends_with("?save") {
        headers.push(("Content-Disposition", "attachment".into()));
    }
    headers.push(("Content-Security-Policy", policy(&name)));
    headers.extend(ALWAYS);
    Response { status: "200 OK", headers, body }
}

/// The policy of the page, and that nobody puts it inside a page of their own: in a page itself that can't be said. The page in
/// one file has a policy of its own inside, which knows its scripts.
fn policy(name: &str) -> Cow<'static, str> {
    const UNFRAMED: &str = "frame-ancestors 'none'";
    if name == build::ENTRY {
        format!("{}; {UNFRAMED}", build::policy()).into()
    } else {
        UNFRAMED.into()
    }
}

/// The browser asks each time whether the file has changed, guesses no types, and tells nobody where it was.
const ALWAYS: [(&str, Cow<'static, str>); 4] = [
    ("Cache-Control", Cow::Borrowed("no-cache")),
    ("X-Content-Type-Options", Cow::Borrowed("nosniff")),
    ("X-Frame-Options", Cow::Borrowed("DENY")),
    ("Referrer-Policy", Cow::Borrowed("no-referrer")),
];

fn refusal(status: &'static str, text: &str) -> Response {
    let kind = ("Content-Type", "text/plain; charset=utf-8".into());
    let headers = [kind].into_iter().chain(ALWAYS).collect();
    Response { status, headers, body: text.into() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::cell::RefCell;
    use std::io::Read;
    use std::path::PathBuf;
    use std::sync::atomic::{AtomicUsize, Ordering};

    /// A server of this folder.
    fn serving(folder: PathBuf, bounds: Bounds) -> SocketAddr {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = listener.local_addr().unwrap();
        thread::spawn(move || serve_from(listener.incoming(), &folder, bounds, thread::sleep));
        address
    }

    /// A server whose folder has nothing to hand out: it says so.
    fn served() -> SocketAddr {
        serving("nowhere".into(), BOUNDS)
    }

    /// A folder of its own with this page in it.
    fn folder_with(name: &str, page: &[u8]) -> PathBuf {
        static COUNT: AtomicUsize = AtomicUsize::new(0);
        let own =
            format!("quietpin-{}-{}", std::process::id(), COUNT.fetch_add(1, Ordering::Relaxed));
        let folder = std::env::temp_dir().join(own);
        fs::create_dir_all(&folder).unwrap();
        fs::write(folder.join(name), page).unwrap();
        folder.canonicalize().unwrap()
    }

    fn connect(address: SocketAddr) -> TcpStream {
        let connection = TcpStream::connect(address).unwrap();
        connection.set_read_timeout(Some(Duration::from_mins(1))).unwrap();
        connection
    }

    fn ask(mut connection: &TcpStream, request: &str) -> String {
        connection.write_all(request.as_bytes()).unwrap();
        let mut answer = String::new();
        connection.read_to_string(&mut answer).unwrap();
        answer
    }

    #[test]
    fn no_connection_waits_for_another() {
        let address = served();
        let all: Vec<_> = (0..40).map(|_| connect(address)).collect();
        // all are open, and none is closed before the last one is answered
        for connection in all.iter().rev() {
            let answer = ask(connection, "GET / HTTP/1.1\r\n\r\n");
            assert!(answer.starts_with("HTTP/1.1 404 Not Found\r\n"), "{answer}");
        }
    }

    #[test]
    fn only_reading_is_allowed() {
        let answer = ask(&connect(served()), "POST / HTTP/1.1\r\n\r\n");
        assert!(answer.starts_with("HTTP/1.1 405 "), "{answer}");
        let answer = ask(&connect(served()), "HEAD /a HTTP/1.1\r\n\r\n");
        assert!(answer.starts_with("HTTP/1.1 404 ") && answer.ends_with("\r\n\r\n"), "{answer}");
    }

    #[test]
    fn the_page_brings_its_policy_and_is_shown_inside_no_other() {
        let folder = folder_with(build::ENTRY, b"page");
        fs::write(folder.join(build::SINGLE), b"page").unwrap();
        let address = serving(folder.clone(), BOUNDS);
        let head = |path: &str| ask(&connect(address), &format!("HEAD {path} HTTP/1.1\r\n\r\n"));
        let (entry, single) = (head("/"), head("/quietpin.html"));
        for answer in [&entry, &single] {
            assert!(answer.starts_with("HTTP/1.1 200 "), "{answer}");
            assert!(answer.contains("\r\nX-Frame-Options: DENY\r\n"), "{answer}");
            assert!(answer.contains("frame-ancestors 'none'\r\n"), "{answer}");
        }
        assert!(entry.contains("Content-Security-Policy: default-src 'none'; "), "{entry}");
        assert!(!single.contains("script-src"), "its scripts stand in itself: {single}");
        fs::remove_dir_all(folder).unwrap();
    }

    /// One at a time, and each not for long.
    const TIGHT: Bounds = Bounds {
        connections: 1,
        request: Duration::from_millis(200),
        answer: Duration::from_secs(2),
    };

    #[test]
    fn who_asks_for_nothing_or_byte_by_byte_keeps_nobody_out() {
        let address = serving("nowhere".into(), TIGHT);
        let _unused = connect(address);
        let mut slow = connect(address);
        thread::spawn(move || {
            // it ends when the server has enough
            while slow.write_all(b"G").is_ok() {
                thread::sleep(Duration::from_millis(20));
            }
        });
        // what is given up while it waits for the only place is asked again, as a browser does
        let is_answered = || {
            let mut answer = String::new();
            let mut connection = connect(address);
            connection.write_all(b"GET / HTTP/1.1\r\n\r\n").is_ok()
                && connection.read_to_string(&mut answer).is_ok()
                && answer.starts_with("HTTP/1.1 404 ")
        };
        let end = Instant::now() + Duration::from_mins(1);
        while !is_answered() {
            assert!(Instant::now() < end, "nobody else is answered");
        }
    }

    #[test]
    fn who_does_not_take_the_answer_keeps_nobody_out() {
        // more than lies on the way between the two
        let folder = folder_with(build::ENTRY, &vec![b' '; 64_000_000]);
        let address = serving(folder.clone(), Bounds { request: BOUNDS.request, ..TIGHT });
        let mut asleep = connect(address);
        asleep.write_all(b"GET / HTTP/1.1\r\n\r\n").unwrap();
        let answer = ask(&connect(address), "GET /none HTTP/1.1\r\n\r\n");
        assert!(answer.starts_with("HTTP/1.1 404 "), "{answer}");
        fs::remove_dir_all(folder).unwrap();
    }

    #[test]
    fn where_no_connection_can_be_taken_it_waits() {
        let full = || Err(io::Error::other("out of files"));
        let waits = RefCell::new(Vec::new());
        let tried = (0..1000).map(|_| full());
        serve_from(tried, Path::new("nowhere"), BOUNDS, |it| waits.borrow_mut().push(it));
        let waits = waits.into_inner();
        assert_eq!(waits.len(), 1000);
        assert!(waits.is_sorted(), "longer each time");
        assert!(waits.iter().sum::<Duration>() > Duration::from_mins(30), "it hardly tries");
    }
}
