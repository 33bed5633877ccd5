//! Building the page: the core as wasm, the bundle, the finished site and the
//! single file.

mod bundle;
mod core;
mod digest;
mod html;
mod labels;

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use clap::ValueEnum;

pub(crate) use digest::gzipped_len;

use crate::{place, tools};

/// File name of the page that needs nothing beside it.
pub(crate) const SINGLE_FILE: &str = "overspread.html";

/// File name of the service worker; fixed, so a browser finds its successor.
pub(crate) const SERVICE_WORKER: &str = "service-worker.js";

/// How the page speaks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Words {
    /// As it is served
    Plain,
    /// Each sentence two fifths longer, its letters accented
    Long,
    /// From right to left
    Mirrored,
}

impl Words {
    /// What the planner is compiled with to speak so.
    fn features(self) -> &'static [&'static str] {
        match self {
            Words::Plain => &[],
            Words::Long => &["words-long"],
            Words::Mirrored => &["words-mirrored"],
        }
    }

    /// Where a page that speaks so is built.
    fn place(self) -> PathBuf {
        match self {
            Words::Plain => place::dist(),
            Words::Long => place::target().join("words-long"),
            Words::Mirrored => place::target().join("words-mirrored"),
        }
    }
}

/// Builds the page into `dist/` and returns that directory.
///
/// # Errors
/// When a compiler, the type checker or the bundler fails, or the page's HTML
/// does not hold what is to be replaced.
pub(crate) fn build() -> Result<PathBuf> {
    build_speaking(Words::Plain)
}

/// Builds the page with other words, elsewhere, and returns that directory.
///
/// # Errors
/// As [`build`].
pub(crate) fn build_speaking(words: Words) -> Result<PathBuf> {
    tools::npm_packages()?;
    let core = core::build(core::CORE, words.features())?;
    let outputs = core::build(core::OUTPUTS, &[])?;
    let early = core::build(core::EARLY, &[])?;
    labels::write(words)?;
    bundle::check_types()?;
    let dist = words.place();
    if dist.exists() {
        fs::remove_dir_all(&dist)?;
    }
    fs::create_dir_all(&dist)?;
    let template = fs::read_to_string(place::www().join("index.html"))?;
    let template = html::directed(template, words == Words::Mirrored)?;

    let core_name = emit(&dist, "core.wasm", &core)?;
    let worker_name = emit(&dist, "worker.js", &bundle::worker()?)?;
    let style = bundle::style()?;
    let style_name = emit(&dist, "style.css", &style)?;
    let later = [
        emit(&dist, "outputs.wasm", &outputs)?,
        emit(&dist, "outputs-worker.js", &bundle::outputs_worker()?)?,
    ];
    let main = bundle::site_main(&core_name, &worker_name, &later)?;
    let main_name = emit(&dist, "main.js", &main)?;
    let early_name = emit(&dist, "early.wasm", &early)?;
    let begin = bundle::site_begin(&early_name, &main_name)?;
    copy_all(&place::root().join("static"), &dist)?;
    let page = html::site(
        &template,
        &html::Linked {
            name: &style_name,
            content: &style,
        },
        &begin,
    )?;
    fs::write(dist.join("index.html"), page)?;

    let mut files = listing(&dist)?;
    // The system takes its icons once, when the page is installed.
    files.retain(|name| !name.ends_with(".png"));
    let revision = digest::of_files(&dist, &files)?;
    files.retain(|name| !is_later(name) && !is_early(name));
    fs::write(
        dist.join(SERVICE_WORKER),
        bundle::service_worker(&files, &later, &revision)?,
    )?;
    Ok(dist)
}

/// Builds the page and, beside it, the single file that also opens from disk.
///
/// # Errors
/// As [`build`].
pub(crate) fn build_with_single_file() -> Result<PathBuf> {
    let dist = build()?;
    let template = fs::read_to_string(place::www().join("index.html"))?;
    let icon = fs::read(dist.join("icon.svg")).context("static/icon.svg is missing")?;
    let main = bundle::single_main(&fs::read(core::optimised(core::CORE))?)?;
    let page = html::single(&template, &bundle::style()?, &main, &icon)?;
    fs::write(dist.join(SINGLE_FILE), page)?;
    Ok(dist)
}

/// Whether a file is fetched after the first picture: when a paper is asked for,
/// or in the background by the service worker.
pub(crate) fn is_later(name: &str) -> bool {
    name.starts_with(core::OUTPUTS.name)
}

/// Whether a file is fetched only where a link is opened and the planner never
/// was.
pub(crate) fn is_early(name: &str) -> bool {
    name.starts_with(core::EARLY.name)
}

/// Every file under `dir` as a path with forward slashes, sorted.
///
/// # Errors
/// When the directory cannot be read.
pub(crate) fn listing(dir: &Path) -> Result<Vec<String>> {
    let mut files = Vec::new();
    let mut open = vec![String::new()];
    while let Some(prefix) = open.pop() {
        for entry in fs::read_dir(dir.join(&prefix))? {
            let entry = entry?;
            let name = format!("{prefix}{}", entry.file_name().to_string_lossy());
            if entry.file_type()?.is_dir() {
                open.push(format!("{name}/"));
            } else {
                files.push(name);
            }
        }
    }
    files.sort();
    Ok(files)
}

/// Writes a file under a name that changes with its content, so that no cache
/// can pair files of two builds; returns the name.
fn emit(dist: &Path, name: &str, content: &[u8]) -> Result<String> {
    let (stem, extension) = name.rsplit_once('.').context("a file needs an extension")?;
    let name = format!("{stem}-{}.{extension}", digest::short(content));
    fs::write(dist.join(&name), content)?;
    Ok(name)
}

/// Copies the files under `from` into `to` as they are.
fn copy_all(from: &Path, to: &Path) -> Result<()> {
    for name in listing(from)? {
        let target = to.join(&name);
        if let Some(parent) = target.parent() {
            fs::create_dir_all(parent)?;
        }
        fs::copy(from.join(&name), target)?;
    }
    Ok(())
}
