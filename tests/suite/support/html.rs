//! Finding things on a page by the words a person reads.

use scraper::{ElementRef, Html, Selector};

pub fn select<'a>(page: &'a Html, css: &str) -> Vec<ElementRef<'a>> {
    page.select(&Selector::parse(css).expect("a selector")).collect()
}

/// The first bytes of a PNG of 640 by 480 (ISO/IEC 15948, 5.2 and 11.2.2): enough to be a photo.
pub fn photo() -> Vec<u8> {
    let mut bytes = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".to_vec();
    bytes.extend([0, 0, 2, 128, 0, 0, 1, 224, 8, 2, 0, 0, 0, 0, 0, 0, 0]);
    bytes
}

/// The text of an element as it is read: white space folded.
pub fn text(element: ElementRef) -> String {
    element.text().collect::<Vec<_>>().join(" ").split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The whole page as text.
pub fn page_text(page: &Html) -> String {
    select(page, "body").into_iter().map(text).collect()
}

/// The field a label names: inputs, text areas and selects.
pub fn labelled<'a>(page: &'a Html, label: &str) -> Option<ElementRef<'a>> {
    let labels = select(page, "label[for]");
    let found = labels.into_iter().find(|it| names(*it, label))?;
    let id = found.value().attr("for")?;
    select(page, &format!("[id='{id}']")).into_iter().next()
}

/// A label's own words: a choice carries a hint after them.
fn names(label: ElementRef, wanted: &str) -> bool {
    let first = label.select(&Selector::parse("span").expect("a selector")).next();
    text(label) == wanted || first.is_some_and(|it| text(it) == wanted)
}

/// The name of the radio button with this value in the group with this legend.
pub fn choice(page: &Html, legend: &str, value: &str) -> Option<String> {
    let says =
        |it: &ElementRef| within(*it, "legend").first().is_some_and(|it| text(*it) == legend);
    let group = select(page, "fieldset").into_iter().find(says)?;
    let buttons = within(group, "input[type='radio']").into_iter();
    let mut found = buttons.filter(|it| it.value().attr("value") == Some(value));
    Some(found.next()?.value().attr("name")?.to_owned())
}

fn within<'a>(element: ElementRef<'a>, selector: &str) -> Vec<ElementRef<'a>> {
    element.select(&Selector::parse(selector).expect("a selector")).collect()
}

/// The form an element stands in.
pub fn form_of<'a>(element: ElementRef<'a>) -> Option<ElementRef<'a>> {
    element.ancestors().filter_map(ElementRef::wrap).find(|it| it.value().name() == "form")
}

/// What a form would send as it stands: names and values, ticked boxes only.
pub fn standing(form: ElementRef) -> Vec<(String, String)> {
    let fields = Selector::parse("input, textarea, select").expect("a selector");
    form.select(&fields).filter_map(value).collect()
}

fn value(field: ElementRef) -> Option<(String, String)> {
    let it = field.value();
    let name = it.attr("name")?.to_owned();
    let own = |it: &str| Some((name.clone(), it.to_owned()));
    match (it.name(), it.attr("type")) {
        ("input", Some("checkbox" | "radio")) => {
            it.attr("checked").and_then(|_| own(it.attr("value").unwrap_or("on")))
        }
        // What is chosen there is `Browser::attach`.
        ("input", Some("file")) => None,
        ("input", _) => own(it.attr("value").unwrap_or_default()),
        ("textarea", _) => own(&field.text().collect::<String>()),
        _ => own(&selected(field)),
    }
}

fn selected(field: ElementRef) -> String {
    let find = |css: &str| field.select(&Selector::parse(css).expect("a selector")).next();
    let option = find("option[selected]").or_else(|| find("option"));
    option.map_or_else(String::new, |it| match it.value().attr("value") {
        Some(value) => value.to_owned(),
        None => text(it),
    })
}
