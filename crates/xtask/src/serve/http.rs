//! HTTP, as much of it as handing out files takes: one request, one answer, then the connection is closed.
//!
//! A browser opens several connections at once, some of them in advance, and keeps what it may keep: each has a thread of
//! its own, since one that had to wait for another to be closed would hold up the whole page.

use std::borrow::Cow;
use std::io::{self, BufRead, BufReader, Read, Write};

/// Most that is read of a request, in bytes: a browser's has a few hundred.
const LONGEST: u64 = 64 * 1024;

/// What a browser asks for.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Request {
    pub(super) method: String,
    pub(super) url: String,
}

impl Request {
    /// Reads one; none where the connection was never used, or is used for something else.
    pub(super) fn read(stream: impl Read) -> Option<Self> {
        let mut lines = BufReader::new(stream.take(LONGEST));
        let first = line(&mut lines)?;
        while !line(&mut lines)?.is_empty() {}
        let mut words = first.split(' ');
        let (method, url) = (words.next()?.to_owned(), words.next()?.to_owned());
        words.next()?.starts_with("HTTP/1.").then_some(Self { method, url })
    }
}

/// A line without its end; none where the request breaks off.
fn line(lines: &mut impl BufRead) -> Option<String> {
    let mut line = Vec::new();
    lines.read_until(b'\n', &mut line).ok()?;
    let line = line.strip_suffix(b"\n")?;
    Some(String::from_utf8_lossy(line.strip_suffix(b"\r").unwrap_or(line)).into_owned())
}

/// What is answered.
#[derive(Debug)]
pub(super) struct Response {
    /// Number and words.
    pub(super) status: &'static str,
    pub(super) headers: Vec<(&'static str, Cow<'static, str>)>,
    pub(super) body: Vec<u8>,
}

impl Response {
    /// Sends it; its head alone where only that was asked for.
    pub(super) fn send(&self, to: &mut impl Write, head_only: bool) -> io::Result<()> {
        let mut head = format!("HTTP/1.1 {}\r\nConnection: close\r\n", self.status);
        for (name, value) in &self.headers {
            head.extend([name, ": ", value, "\r\n"]);
        }
        head.extend(["Content-Length: ", &self.body.len().to_string(), "\r\n\r\n"]);
        to.write_all(head.as_bytes())?;
        if !head_only {
            to.write_all(&self.body)?;
        }
        to.flush()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::net::{Shutdown, TcpListener, TcpStream};

    fn read(sent: &str) -> Option<Request> {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let mut browser = TcpStream::connect(listener.local_addr().unwrap()).unwrap();
        browser.write_all(sent.as_bytes()).unwrap();
        browser.shutdown(Shutdown::Write).unwrap();
        Request::read(&listener.accept().unwrap().0)
    }

    // The examples follow RFC 9112, sections 2 and 3.
    #[test]
    fn a_request_is_its_first_line() {
        let request = read("GET /a.js?b HTTP/1.1\r\nHost: here\r\n\r\n");
        let expected = Request { method: "GET".into(), url: "/a.js?b".into() };
        assert_eq!(request, Some(expected), "its headers say nothing that matters here");
    }

    #[test]
    fn what_breaks_off_or_is_no_request_is_none() {
        for sent in ["", "GET / HTTP/1.1\r\nHost: he", "GET /\r\n\r\n", "\u{16}\u{3}\u{1}\r\n\r\n"]
        {
            assert_eq!(read(sent), None, "{sent:?}");
        }
    }

    #[test]
    fn an_endless_request_is_given_up() {
        let endless = format!("GET / HTTP/1.1\r\nCookie: {}", "x".repeat(100_000));
        assert_eq!(read(&endless), None, "longer than any browser's");
    }

    fn sent(head_only: bool) -> String {
        let headers = vec![("Content-Type", "text/plain".into())];
        let response = Response { status: "200 OK", headers, body: b"page".to_vec() };
        let mut sent = Vec::new();
        response.send(&mut sent, head_only).unwrap();
        String::from_utf8(sent).unwrap()
    }

    #[test]
    fn an_answer_is_a_head_an_empty_line_and_a_body() {
        let head = "HTTP/1.1 200 OK\r\nConnection: close\r\nContent-Type: text/plain\r\nContent-Length: 4\r\n\r\n";
        assert_eq!(sent(false), format!("{head}page"), "RFC 9112, section 2.1");
        assert_eq!(sent(true), head, "RFC 9110, section 9.3.2: the same without its body");
    }
}
