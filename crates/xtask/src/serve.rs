//! A small web server for the built page: this machine, or the phones in the same workshop.

mod files;
mod http;

use crate::arguments::{Serve, Source};
use crate::{build, folders, shell};
use anyhow::{Context, Result};
use http::{Request, Response};
use std::fs;
use std::io::{self, Write};
use std::net::{IpAddr, Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::Path;
use std::thread;

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
    serve_from(&listener, &folder);
    Ok(())
}

/// Answers every connection in a thread of its own: a browser may leave one unused, or an answer unread, for as long as
/// it likes; the others must not wait for it.
fn serve_from(listener: &TcpListener, folder: &Path) {
    thread::scope(|scope| {
        for connection in listener.incoming() {
            scope.spawn(|| {
                // A phone that walked out of reach is no reason to stop.
                if let Err(error) = connection.and_then(|it| respond(it, folder)) {
                    shell::say(&format!("An answer did not arrive: {error}."));
                }
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

fn respond(mut connection: TcpStream, folder: &Path) -> io::Result<()> {
    let Some(request) = Request::read(&connection) else { return Ok(()) };
    answer(&request, folder).send(&mut connection, request.method == "HEAD")
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
    let mut headers = vec![("Content-Type", files::media_type(&path))];
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    if name == build::SINGLE && request.url.ends_with("?save") {
        headers.push(("Content-Disposition", "attachment"));
    }
    headers.extend(ALWAYS);
    Response { status: "200 OK", headers, body }
}

/// The browser asks each time whether the file has changed, guesses no types, and tells nobody where it was.
const ALWAYS: [(&str, &str); 3] = [
    ("Cache-Control", "no-cache"),
    ("X-Content-Type-Options", "nosniff"),
    ("Referrer-Policy", "no-referrer"),
];

fn refusal(status: &'static str, text: &str) -> Response {
    let kind = ("Content-Type", "text/plain; charset=utf-8");
    let headers = [kind].into_iter().chain(ALWAYS).collect();
    Response { status, headers, body: text.into() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::Read;
    use std::time::Duration;

    /// A server whose folder has nothing to hand out: it says so.
    fn served() -> SocketAddr {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = listener.local_addr().unwrap();
        thread::spawn(move || serve_from(&listener, Path::new("nowhere")));
        address
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
}
