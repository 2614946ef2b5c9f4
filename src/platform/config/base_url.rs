//! The address under which the family reaches the server: links in mail and on sheets start with it.

use std::net::SocketAddr;

use url::Url;

pub const WANTED: &str =
    "http:// or https://, a host, and perhaps a path, such as https://example.org/care";

/// An origin and perhaps a path below it, for a server that shares its host with others.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Base {
    origin: String,
    path: String,
    is_https: bool,
}

impl Base {
    /// Without user, query and fragment, and with plain letters, digits, "-", "_", "." and "~" in the path, so that it
    /// may stand in a cookie and in a template as it is.
    pub fn parse(text: &str) -> Option<Base> {
        let url = Url::parse(text).ok()?;
        let is_web = matches!(url.scheme(), "http" | "https");
        let is_bare = url.username().is_empty() && url.password().is_none();
        let has_no_tail = url.query().is_none() && url.fragment().is_none();
        let path = url.path().trim_end_matches('/').to_owned();
        let is_plain = path.split('/').skip(1).all(is_plain_segment);
        let base = Base {
            origin: url.origin().ascii_serialization(),
            path,
            is_https: url.scheme() == "https",
        };
        (is_web && is_bare && has_no_tail && is_plain).then_some(base)
    }

    /// A server that listens everywhere is reached from its own machine by "localhost".
    pub fn of(listen: SocketAddr) -> Base {
        let host = if listen.ip().is_unspecified() {
            format!("localhost:{}", listen.port())
        } else {
            listen.to_string()
        };
        Base { origin: format!("http://{host}"), path: String::new(), is_https: false }
    }

    /// Empty, or a path that starts with a slash and does not end with one: "/care".
    pub fn path(&self) -> &str {
        &self.path
    }

    pub fn is_https(&self) -> bool {
        self.is_https
    }

    /// What stands behind the "@" of a Message-ID: the host, or its number in square brackets
    /// (RFC 5322 (2008), section 3.6.4: a domain literal).
    pub fn mail_domain(&self) -> String {
        let url = Url::parse(&self.origin).ok();
        match url.as_ref().and_then(Url::host) {
            Some(url::Host::Domain(name)) => name.trim_end_matches('.').to_owned(),
            Some(url::Host::Ipv4(number)) => format!("[{number}]"),
            Some(url::Host::Ipv6(number)) => format!("[IPv6:{number}]"),
            None => "localhost".to_owned(),
        }
    }

    /// "https://example.org", with the port when it is not the usual one.
    pub fn origin(&self) -> String {
        self.origin.clone()
    }

    /// The whole address of `path`, which is counted from the base: "/sign-in".
    pub fn absolute(&self, path: &str) -> String {
        format!("{}{}/{}", self.origin, self.path, path.trim_start_matches('/'))
    }
}

fn is_plain_segment(segment: &str) -> bool {
    let is_plain = |one: char| one.is_ascii_alphanumeric() || "-_.~".contains(one);
    !segment.is_empty() && segment.chars().all(is_plain)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn base(text: &str) -> Base {
        Base::parse(text).expect(text)
    }

    #[test]
    fn an_origin_alone_has_no_path() {
        for text in [
            "https://varga.example.org",
            "https://varga.example.org/",
            "HTTPS://Varga.example.org:443",
        ] {
            let base = base(text);
            assert_eq!((base.origin().as_str(), base.path()), ("https://varga.example.org", ""));
            assert!(base.is_https());
            assert_eq!(base.absolute("/sign-in"), "https://varga.example.org/sign-in");
        }
    }

    #[test]
    fn a_path_is_kept_without_its_last_slash() {
        let base = base("http://192.0.2.7:8080/our/care/");
        assert_eq!((base.origin().as_str(), base.path()), ("http://192.0.2.7:8080", "/our/care"));
        assert!(!base.is_https());
        assert_eq!(
            base.absolute("/p/1/today?day=2"),
            "http://192.0.2.7:8080/our/care/p/1/today?day=2"
        );
        assert_eq!(base.absolute(""), "http://192.0.2.7:8080/our/care/");
    }

    #[test]
    fn listening_everywhere_is_localhost() {
        let of = |listen: &str| Base::of(listen.parse().unwrap()).origin();
        assert_eq!(of("0.0.0.0:8317"), "http://localhost:8317");
        assert_eq!(of("[::1]:8317"), "http://[::1]:8317");
    }

    #[test]
    fn a_host_is_a_domain_and_a_number_a_literal() {
        for (text, domain) in [
            ("https://Varga.example.org/care", "varga.example.org"),
            ("http://127.0.0.1:8317", "[127.0.0.1]"),
            ("http://[::1]:8317", "[IPv6:::1]"),
        ] {
            assert_eq!(base(text).mail_domain(), domain);
        }
    }

    #[test]
    fn what_is_no_base_is_refused() {
        for text in [
            "varga.example.org",
            "ftp://example.org",
            "https://",
            "https://ines:x@example.org",
            "https://ines@example.org",
            "https://example.org/?a=b",
            "https://example.org/#top",
            "https://example.org/a//b",
            "https://example.org/a b",
            "https://example.org/a;b",
            "https://example.org/%2e%2e%2fcare",
            "/care",
            "javascript:alert(1)",
        ] {
            assert_eq!(Base::parse(text), None, "{text}");
        }
    }
}
