//! What every door wants to know of a request: its path, the line left by the last answer, the
//! key of its form, and where it comes from.

use super::{form::Fields, form::FormKey};
use crate::platform::{address, config::Base, house::House};
use axum::{
    extract::{ConnectInfo, FromRequestParts},
    http::{header, request::Parts},
};
use axum_extra::extract::cookie::{Cookie, CookieJar, SameSite};
use std::{
    convert::Infallible,
    net::{IpAddr, Ipv4Addr, SocketAddr},
};

pub const FLASH: &str = "said";

#[derive(Clone)]
pub struct Asked {
    /// The path below the base path: routing has taken that off.
    pub path: String,
    pub flash: Option<String>,
    pub key: Option<FormKey>,
    pub client: IpAddr,
    /// What the browser calls itself, for the list of devices.
    pub agent: String,
    pub cookies: CookieJar,
}

impl FromRequestParts<House> for Asked {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, house: &House) -> Result<Self, Infallible> {
        let header = |name| {
            let all = parts.headers.get_all(name).iter();
            all.filter_map(|it| it.to_str().ok()).collect::<Vec<_>>()
        };
        let peer = parts.extensions.get::<ConnectInfo<SocketAddr>>().map(|it| it.0.ip());
        let peer = peer.unwrap_or(IpAddr::V4(Ipv4Addr::LOCALHOST));
        let cookies = CookieJar::from_headers(&parts.headers);
        Ok(Asked {
            path: parts.uri.path().to_owned(),
            // The jar has decoded it.
            flash: cookies.get(FLASH).map(|it| it.value().to_owned()),
            key: parts.extensions.get::<Fields>().and_then(FormKey::of),
            client: address::client(peer, &header("x-forwarded-for"), house.config.trusted()),
            agent: header(header::USER_AGENT.as_str())
                .first()
                .unwrap_or(&"")
                .chars()
                .take(200)
                .collect(),
            cookies,
        })
    }
}

/// A cookie of this house: not for scripts, not for other sites' forms.
pub fn cookie(base: &Base, name: String, value: String) -> Cookie<'static> {
    Cookie::build((name, value))
        .path("/")
        .http_only(true)
        .secure(base.is_https())
        .same_site(SameSite::Lax)
        .build()
}

/// The cookie that carries one line to the next page.
pub fn flash_cookie(base: &Base, line: &str) -> Cookie<'static> {
    let value = percent_encoding::utf8_percent_encode(line, percent_encoding::NON_ALPHANUMERIC);
    let mut cookie = cookie(base, FLASH.into(), value.to_string());
    cookie.set_max_age(time::Duration::minutes(2));
    cookie
}

/// A cookie that takes another away.
pub fn gone(base: &Base, name: String) -> Cookie<'static> {
    let mut cookie = cookie(base, name, String::new());
    cookie.set_max_age(time::Duration::ZERO);
    cookie
}
