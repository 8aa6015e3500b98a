//! A small web server for the built page: this machine, or the phones in the same workshop.

mod files;

use crate::arguments::{Serve, Source};
use crate::{build, folders, shell};
use anyhow::{Context, Result, bail};
use std::fs;
use std::io::{self, Write};
use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::path::Path;
use std::thread;
use tiny_http::{Header, Method, Request, Response, Server};

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
    let server = listen(how)?;
    announce(how.lan, port(&server)?);
    for request in server.incoming_requests() {
        let folder = folder.clone();
        // A browser may leave an answer unread for as long as it likes; the others must not wait for it.
        thread::spawn(move || {
            // A phone that walked out of reach is no reason to stop.
            if let Err(error) = respond(request, &folder) {
                shell::say(&format!("An answer did not arrive: {error}."));
            }
        });
    }
    Ok(())
}

fn listen(how: &Serve) -> Result<Server> {
    let host = if how.lan { Ipv4Addr::UNSPECIFIED } else { Ipv4Addr::LOCALHOST };
    Server::http(SocketAddr::from((host, how.port))).map_err(|error| {
        let port = how.port;
        anyhow::anyhow!("cannot listen on port {port} ({error}); `--port 0` takes a free one")
    })
}

fn port(server: &Server) -> Result<u16> {
    match server.server_addr().to_ip() {
        Some(address) => Ok(address.port()),
        None => bail!("the server has no port"),
    }
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

fn respond(request: Request, folder: &Path) -> io::Result<()> {
    if !matches!(request.method(), Method::Get | Method::Head) {
        return refuse(request, 405, "Only GET and HEAD.");
    }
    let Some(path) = files::locate(folder, request.url()) else {
        return refuse(request, 404, "There is no such file.");
    };
    let Ok(bytes) = fs::read(&path) else {
        return refuse(request, 500, "The file could not be read.");
    };
    let mut response = Response::from_data(bytes);
    let kind = files::media_type(&path);
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    let mut headers = vec![("Content-Type", kind)];
    if name == build::SINGLE && request.url().ends_with("?save") {
        headers.push(("Content-Disposition", "attachment"));
    }
    for header in headers.into_iter().chain(ALWAYS).filter_map(header) {
        response.add_header(header);
    }
    request.respond(response)
}

/// The browser asks each time whether the file has changed, guesses no types, and tells nobody where it was.
const ALWAYS: [(&str, &str); 3] = [
    ("Cache-Control", "no-cache"),
    ("X-Content-Type-Options", "nosniff"),
    ("Referrer-Policy", "no-referrer"),
];

fn refuse(request: Request, status: u16, text: &str) -> io::Result<()> {
    let mut response = Response::from_string(text).with_status_code(status);
    for header in ALWAYS.into_iter().filter_map(header) {
        response.add_header(header);
    }
    request.respond(response)
}

fn header((name, value): (&str, &str)) -> Option<Header> {
    Header::from_bytes(name, value).ok()
}
