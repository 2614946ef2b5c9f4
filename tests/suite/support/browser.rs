//! A browser without scripts: it opens pages, follows what a page offers, and submits *the form
//! on the page* by the labels a person reads. A field that is missing from a template breaks the
//! journey that needs it.

use super::{
    html,
    sent::{CARRIES, Chosen, encoded, parts},
};
use axum::{
    Router,
    body::Body,
    http::{HeaderMap, Request, Response, StatusCode, header},
};
use http_body_util::BodyExt;
use scraper::Html;
use std::collections::BTreeMap;
use tower::ServiceExt;

/// Method, address and fields of what pressing would send.
pub type Press = (&'static str, String, Vec<(String, String)>);

pub struct Browser {
    app: Router,
    cookies: BTreeMap<String, String>,
    /// The address of the page it shows.
    pub at: String,
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub body: Vec<u8>,
    typed: Vec<(String, String)>,
    unticked: Vec<String>,
    pub(super) attached: Vec<Chosen>,
    /// What the browser says of the page a request comes from.
    pub(super) site: String,
    /// What the next request says besides.
    pub(super) heads: Vec<(String, String)>,
}

impl Browser {
    pub fn new(app: &Router) -> Browser {
        Browser {
            app: app.clone(),
            cookies: BTreeMap::new(),
            at: "/".into(),
            status: StatusCode::OK,
            headers: HeaderMap::new(),
            body: Vec::new(),
            typed: Vec::new(),
            unticked: Vec::new(),
            attached: Vec::new(),
            site: "same-origin".into(),
            heads: Vec::new(),
        }
    }

    /// Opens an address, going where it leads.
    pub async fn open(&mut self, address: &str) -> &mut Self {
        self.go("GET", address, None).await;
        for _ in 0..5 {
            if self.status != StatusCode::SEE_OTHER {
                break;
            }
            let to = self.at.clone();
            self.go("GET", &to, None).await;
        }
        self
    }

    /// Asks an address and stays, wherever it leads.
    pub async fn get(&mut self, address: &str) -> &mut Self {
        self.go("GET", address, None).await;
        self
    }

    /// The same by another method.
    pub async fn ask(&mut self, method: &str, address: &str) -> &mut Self {
        self.go(method, address, None).await;
        self
    }

    /// Types into the field with this label, or chooses there.
    pub fn fill(&mut self, label: &str, value: &str) -> &mut Self {
        let name = self.name_of(label);
        self.typed.retain(|(it, _)| *it != name);
        self.typed.push((name, value.to_owned()));
        self
    }

    /// Ticks a box or chooses a radio button by its label.
    pub fn tick(&mut self, label: &str) -> &mut Self {
        let page = self.page();
        let field = html::labelled(&page, label)
            .unwrap_or_else(|| panic!("no box {label:?}\n{}", self.text()));
        let name = field.value().attr("name").expect("a name").to_owned();
        let value = field.value().attr("value").unwrap_or("on").to_owned();
        if field.value().attr("type") == Some("radio") {
            self.typed.retain(|(it, _)| *it != name);
        }
        self.typed.push((name, value));
        self
    }

    /// Chooses a radio button of the group with this legend: several groups may offer the same.
    pub fn choose(&mut self, legend: &str, words: &str) -> &mut Self {
        let page = self.page();
        let found = html::choice(&page, legend, words);
        let name = found.unwrap_or_else(|| panic!("no {words:?} in {legend:?}\n{}", self.text()));
        self.typed.retain(|(it, _)| *it != name);
        self.typed.push((name, words.to_owned()));
        self
    }

    /// Takes the tick off every box of this label's name.
    pub fn untick(&mut self, label: &str) -> &mut Self {
        let name = self.name_of(label);
        self.unticked.push(name);
        self
    }

    pub(super) fn name_of(&self, label: &str) -> String {
        let page = self.page();
        let field = html::labelled(&page, label);
        let field =
            field.unwrap_or_else(|| panic!("no field {label:?} at {}\n{}", self.at, self.text()));
        field.value().attr("name").expect("a name").to_owned()
    }

    /// Presses a link or a button by its words.
    pub async fn press(&mut self, words: &str) -> &mut Self {
        let (method, address, form) = self.pressed(words);
        self.typed.clear();
        self.unticked.clear();
        match method {
            "GET" => self.open(&address).await,
            _ => {
                self.send(&address, &form).await;
                if self.status == StatusCode::SEE_OTHER {
                    let to = self.at.clone();
                    self.open(&to).await;
                }
                self
            }
        }
    }

    /// What pressing would do, with what was typed.
    pub fn pressed(&self, words: &str) -> Press {
        self.pressed_where(words, |it| it == words)
    }

    /// The same for a button whose words go on with what it is about.
    pub fn pressed_starting(&self, words: &str) -> Press {
        self.pressed_where(words, |it| it.starts_with(words))
    }

    fn pressed_where(&self, words: &str, fits: impl Fn(&str) -> bool) -> Press {
        let page = self.page();
        let says = |it: &scraper::ElementRef| fits(&html::text(*it));
        if let Some(button) = html::select(&page, "button").into_iter().find(says) {
            let form = html::form_of(button).expect("a button stands in a form");
            let action = form.value().attr("action").expect("an action").to_owned();
            let method = form.value().attr("method").unwrap_or("get");
            let mut fields = self.laid_over(html::standing(form));
            let own = (button.value().attr("name"), button.value().attr("value"));
            if let ("post", (Some(name), Some(value))) = (method, own) {
                fields.push((name.to_owned(), value.to_owned()));
            }
            return match method {
                "post" => ("POST", action, fields),
                _ => ("GET", format!("{action}?{}", encoded(&fields)), Vec::new()),
            };
        }
        let link = html::select(&page, "a[href]").into_iter().find(says);
        let link = link.unwrap_or_else(|| {
            panic!("nothing to press {words:?} at {}\n{}", self.at, self.text())
        });
        ("GET", link.value().attr("href").expect("a link").to_owned(), Vec::new())
    }

    fn laid_over(&self, standing: Vec<(String, String)>) -> Vec<(String, String)> {
        let retyped = |name: &String| self.typed.iter().any(|(it, _)| it == name);
        let mut fields: Vec<_> = (standing.into_iter())
            .filter(|(name, _)| !self.unticked.contains(name) && !retyped(name))
            .collect();
        fields.extend(self.typed.iter().cloned());
        fields
    }

    /// Posts fields as they are: for what no page offers.
    pub async fn send(&mut self, address: &str, fields: &[(String, String)]) -> &mut Self {
        let files = std::mem::take(&mut self.attached);
        let form = match files.is_empty() {
            false => (CARRIES.to_owned(), parts(fields, &files)),
            true => ("application/x-www-form-urlencoded".to_owned(), encoded(fields).into_bytes()),
        };
        self.go("POST", address, Some(form)).await;
        self
    }

    /// Posts as a page of another site would.
    pub async fn send_from(
        &mut self,
        site: &str,
        address: &str,
        fields: &[(String, String)],
    ) -> &mut Self {
        let own = std::mem::replace(&mut self.site, site.to_owned());
        self.send(address, fields).await;
        self.site = own;
        self
    }

    pub(super) async fn go(
        &mut self,
        method: &str,
        address: &str,
        form: Option<(String, Vec<u8>)>,
    ) {
        let cookies: Vec<_> =
            self.cookies.iter().map(|(name, it)| format!("{name}={it}")).collect();
        let mut request = Request::builder().method(method).uri(address);
        request = request.header(header::COOKIE, cookies.join("; "));
        request =
            request.header(header::HOST, "127.0.0.1:8317").header("sec-fetch-site", &self.site);
        request = self.heads.drain(..).fold(request, |it, (name, value)| it.header(name, value));
        let mut body = Vec::new();
        if let Some((kind, bytes)) = form {
            request = request.header(header::CONTENT_TYPE, kind);
            body = bytes;
        }
        let request = request.body(Body::from(body)).expect("a request");
        let response = self.app.clone().oneshot(request).await.expect("an answer");
        self.take(address, response).await;
    }

    async fn take(&mut self, asked: &str, response: Response<Body>) {
        self.status = response.status();
        for cookie in response.headers().get_all(header::SET_COOKIE) {
            let text = cookie.to_str().expect("a cookie");
            let (name, rest) = text.split_once('=').expect("a cookie");
            let value = rest.split(';').next().unwrap_or_default();
            match value.is_empty() {
                true => self.cookies.remove(name),
                false => self.cookies.insert(name.to_owned(), value.to_owned()),
            };
        }
        let location = response.headers().get(header::LOCATION);
        let location = location.map(|it| it.to_str().expect("a location").to_owned());
        self.at = location.unwrap_or_else(|| asked.to_owned());
        self.headers = response.headers().clone();
        self.body = response.into_body().collect().await.expect("a body").to_bytes().to_vec();
    }

    pub fn cookie(&self, name: &str) -> Option<&str> {
        self.cookies.get(name).map(String::as_str)
    }

    pub fn page(&self) -> Html {
        Html::parse_document(&String::from_utf8_lossy(&self.body))
    }

    pub fn text(&self) -> String {
        html::page_text(&self.page())
    }

    /// The value that stands in the field with this label.
    pub fn value(&self, label: &str) -> String {
        let page = self.page();
        let field = html::labelled(&page, label).unwrap_or_else(|| panic!("no field {label:?}"));
        let name = field.value().attr("name").expect("a name").to_owned();
        let form = html::form_of(field).expect("a form");
        let found = html::standing(form).into_iter().find(|(it, _)| *it == name);
        found.map(|(_, value)| value).unwrap_or_default()
    }

    #[track_caller]
    pub fn sees(&mut self, words: &str) -> &mut Self {
        assert!(
            self.text().contains(words),
            "{words:?} is not at {} ({}):\n{}",
            self.at,
            self.status,
            self.text()
        );
        self
    }

    #[track_caller]
    pub fn does_not_see(&mut self, words: &str) -> &mut Self {
        assert!(!self.text().contains(words), "{words:?} is at {}:\n{}", self.at, self.text());
        self
    }

    #[track_caller]
    pub fn answers(&mut self, status: u16) -> &mut Self {
        assert_eq!(self.status.as_u16(), status, "at {}:\n{}", self.at, self.text());
        self
    }
}
