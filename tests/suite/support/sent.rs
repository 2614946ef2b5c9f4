//! What a form sends: its fields alone, or with a file.

pub fn encoded(fields: &[(String, String)]) -> String {
    form_urlencoded::Serializer::new(String::new()).extend_pairs(fields).finish()
}

pub const CARRIES: &str = "multipart/form-data; boundary=cut-here";

/// A form that carries a file, as RFC 7578 writes it.
pub fn parts(fields: &[(String, String)], file: &str, bytes: &[u8]) -> Vec<u8> {
    let mut body = Vec::new();
    let begin =
        |name: &str| format!("--cut-here\r\nContent-Disposition: form-data; name=\"{name}\"");
    for (name, value) in fields {
        body.extend(format!("{}\r\n\r\n{value}\r\n", begin(name)).into_bytes());
    }
    body.extend(format!("{}; filename=\"x\"\r\n\r\n", begin(file)).into_bytes());
    body.extend(bytes);
    body.extend(b"\r\n--cut-here--\r\n");
    body
}
