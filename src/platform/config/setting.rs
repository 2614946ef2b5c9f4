//! Reads one setting after another and gathers what is wrong with them.

use std::fmt;
use std::io;
use std::path::Path;

/// A value and where it came from.
pub struct Setting<T> {
    pub value: T,
    source: Source,
}

#[derive(Clone, Copy)]
enum Source {
    Default,
    Environment,
    File,
}

impl<T> Setting<T> {
    pub fn is_default(&self) -> bool {
        matches!(self.source, Source::Default)
    }

    /// A line of the list of settings.
    pub fn shown(&self, name: &str, value: impl Fn(&T) -> String) -> String {
        let source = match self.source {
            Source::Default => "default",
            Source::Environment => "environment",
            Source::File => "file",
        };
        format!("{name:<24}  {} ({source})\n", value(&self.value))
    }
}

impl<T> Setting<Option<T>> {
    /// The value read, or `default` when there was none to read.
    pub fn or(self, default: T) -> Setting<T> {
        Setting { value: self.value.unwrap_or(default), source: self.source }
    }
}

/// Everything that keeps the settings from being used; each line names one, what it is, and what is wanted.
#[derive(Debug)]
pub struct ConfigProblems(Vec<String>);

pub struct Reader<E, F> {
    env: E,
    read_file: F,
    problems: Vec<String>,
}

impl<E: Fn(&str) -> Option<String>, F: Fn(&Path) -> io::Result<String>> Reader<E, F> {
    pub fn new(env: E, read_file: F) -> Self {
        Self { env, read_file, problems: Vec::new() }
    }

    /// An open setting. When it cannot be parsed, the problem is noted and the reading goes on without it.
    pub fn parsed<T>(
        &mut self,
        name: &str,
        wanted: &str,
        parse: impl Fn(&str) -> Option<T>,
    ) -> Setting<Option<T>> {
        let Some(text) = self.text(name) else {
            return Setting { value: None, source: Source::Default };
        };
        let value = parse(&text);
        if value.is_none() {
            self.problems.push(format!("{name} is \"{text}\". Wanted: {wanted}."));
        }
        Setting { value, source: Source::Environment }
    }

    /// A secret, given by itself as `name` or in a file named by `file_name`.
    pub fn secret<T>(
        &mut self,
        name: &str,
        file_name: &str,
        wanted: &str,
        parse: impl Fn(&str) -> Option<T>,
    ) -> Setting<Option<T>> {
        let (text, source) = match (self.text(name), self.text(file_name)) {
            (Some(_), Some(_)) => {
                self.problems.push(format!(
                    "{name} and {file_name} are both set. Wanted: only one of the two."
                ));
                (None, Source::Default)
            }
            (Some(text), None) => (Some(text), Source::Environment),
            (None, Some(path)) => (self.contents(file_name, &path), Source::File),
            (None, None) => (None, Source::Default),
        };
        let value = text.as_deref().and_then(parse);
        if text.is_some() && value.is_none() {
            let name = if matches!(source, Source::File) { file_name } else { name };
            self.problems.push(format!("{name} is set (not shown here). Wanted: {wanted}."));
        }
        Setting { value, source }
    }

    /// A setting that lies in a file named by `name`.
    pub fn file<T>(
        &mut self,
        name: &str,
        wanted: &str,
        parse: impl Fn(&str) -> Option<T>,
    ) -> Setting<Option<T>> {
        let path = self.text(name);
        let text = path.as_ref().and_then(|path| self.contents(name, path));
        let value = text.as_deref().and_then(parse);
        if text.is_some() && value.is_none() {
            let path = path.unwrap_or_default();
            self.problems.push(format!("{name}: {path} cannot be used. Wanted: {wanted}."));
        }
        let source = if value.is_some() { Source::File } else { Source::Default };
        Setting { value, source }
    }

    pub fn is_set(&self, name: &str) -> bool {
        self.text(name).is_some()
    }

    pub fn missing(&mut self, name: &str, wanted: &str) {
        self.problems.push(format!("{name} is not set. Wanted: {wanted}."));
    }

    /// `read` when nothing was wrong.
    pub fn done<T>(self, read: T) -> Result<T, ConfigProblems> {
        if self.problems.is_empty() { Ok(read) } else { Err(ConfigProblems(self.problems)) }
    }

    fn text(&self, name: &str) -> Option<String> {
        let text = (self.env)(name)?.trim().to_owned();
        (!text.is_empty()).then_some(text)
    }

    fn contents(&mut self, name: &str, path: &str) -> Option<String> {
        let wanted = "Wanted: a file that holds the setting.";
        match (self.read_file)(Path::new(path)) {
            Ok(text) if text.trim().is_empty() => {
                self.problems.push(format!("{name}: {path} is empty. {wanted}"))
            }
            Ok(text) => return Some(text.trim().to_owned()),
            Err(error) => {
                self.problems.push(format!("{name}: {path} cannot be read ({error}). {wanted}"))
            }
        }
        None
    }
}

impl fmt::Display for ConfigProblems {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0.len() {
            1 => write!(out, "A setting cannot be used:")?,
            several => write!(out, "{several} settings cannot be used:")?,
        }
        self.0.iter().try_for_each(|problem| write!(out, "\n- {problem}"))
    }
}

impl std::error::Error for ConfigProblems {}
