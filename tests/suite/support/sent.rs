//! What a form sends: its fields alone, or with files; and how a browser chooses them.

use super::Browser;

pub fn encoded(fields: &[(String, String)]) -> String {
    form_urlencoded::Serializer::new(String::new()).extend_pairs(fields).finish()
}

pub const CARRIES: &str = "multipart/form-data; boundary=cut-here";

/// A file that was chosen: the field, its name, its bytes.
pub type Chosen = (String, String, Vec<u8>);

/// A form that carries files, as RFC 7578 writes it; a quote in a name as browsers spell it.
pub fn parts(fields: &[(String, String)], files: &[Chosen]) -> Vec<u8> {
    let mut body = Vec::new();
    let begin =
        |name: &str| format!("--cut-here\r\nContent-Disposition: form-data; name=\"{name}\"");
    for (name, value) in fields {
        body.extend(format!("{}\r\n\r\n{value}\r\n", begin(name)).into_bytes());
    }
    for (field, name, bytes) in files {
        let name = name.replace('"', "%22");
        body.extend(format!("{}; filename=\"{name}\"\r\n\r\n", begin(field)).into_bytes());
        body.extend(bytes);
        body.extend(b"\r\n");
    }
    body.extend(b"--cut-here--\r\n");
    body
}

impl Browser {
    /// Chooses a file in the field with this label: the next form carries it.
    pub fn attach(&mut self, label: &str, bytes: &[u8]) -> &mut Self {
        self.attach_named(label, "x", bytes)
    }

    /// One more file in the same field, under this name.
    pub fn attach_named(&mut self, label: &str, name: &str, bytes: &[u8]) -> &mut Self {
        self.attached.push((self.name_of(label), name.to_owned(), bytes.to_vec()));
        self
    }

    /// Presses over a connection that breaks within the last file that was chosen.
    pub async fn breaks_off(&mut self, words: &str) -> &mut Self {
        let (_, address, form) = self.pressed(words);
        let mut bytes = parts(&form, &std::mem::take(&mut self.attached));
        bytes.truncate(bytes.len() - 30);
        self.go("POST", &address, Some((CARRIES.to_owned(), bytes))).await;
        self
    }

    /// A request as the script of a page makes it.
    pub async fn piece(
        &mut self,
        method: &str,
        address: &str,
        heads: &[(&str, &str)],
        bytes: &[u8],
    ) -> &mut Self {
        self.heads = heads.iter().map(|it| (it.0.to_owned(), it.1.to_owned())).collect();
        let form = ("application/partial-upload".to_owned(), bytes.to_vec());
        self.go(method, address, Some(form)).await;
        self
    }

    /// A form that can carry files, and carries none.
    pub async fn send_parts(&mut self, address: &str, fields: &[(String, String)]) -> &mut Self {
        self.go("POST", address, Some((CARRIES.to_owned(), parts(fields, &[])))).await;
        self
    }

    /// What the browser says from now on of the page a request comes from.
    pub fn comes_from(&mut self, site: &str) -> &mut Self {
        self.site = site.to_owned();
        self
    }
}
