//! Checking and bundling the page's TypeScript and CSS.

use std::fs;

use anyhow::{Context, Result};

use super::digest;
use crate::{place, run, tools};

/// Checks the types of everything under www/src.
pub(super) fn check_types() -> Result<()> {
    let project = place::www().join("tsconfig.json");
    let mut command = run::command(tools::npm_program("tsc"), &["--noEmit", "--project"]);
    run::succeed(command.arg(project))
}

/// The script of the page that loads its module and worker as files, and later
/// those that make papers.
pub(super) fn site_main(
    core_name: &str,
    worker_name: &str,
    [outputs_name, outputs_worker_name]: &[String; 2],
) -> Result<Vec<u8>> {
    bundle(
        "src/main",
        &[
            define("CORE_URL", core_name),
            define("WORKER_URL", worker_name),
            define("OUTPUTS_URL", outputs_name),
            define("OUTPUTS_WORKER_URL", outputs_worker_name),
            define("SERVICE_WORKER_URL", super::SERVICE_WORKER),
        ],
    )
}

/// The script the page of files begins with: a link's picture, then the rest. A
/// classic one, as modules wait for the style sheet.
pub(super) fn site_begin(early_name: &str, main_name: &str) -> Result<Vec<u8>> {
    bundle(
        "src/early",
        &[
            define("EARLY_URL", early_name),
            define("MAIN_URL", main_name),
            "--format=iife".to_owned(),
        ],
    )
}

/// The script of the page that carries its module and worker within.
pub(super) fn single_main(core: &[u8]) -> Result<Vec<u8>> {
    fs::write(
        place::generated().join("core.deflate"),
        digest::deflated(core)?,
    )?;
    fs::write(
        place::generated().join("worker.deflate"),
        digest::deflated(&worker()?)?,
    )?;
    fs::write(
        place::generated().join("starters.deflate"),
        digest::deflated(&starters()?)?,
    )?;
    bundle(
        "src/main",
        &[
            "--conditions=single".to_owned(),
            "--loader:.deflate=base64".to_owned(),
        ],
    )
}

/// The starters by name, as one object of files.
fn starters() -> Result<Vec<u8>> {
    let dir = place::root().join("static/starters");
    let mut all = serde_json::Map::new();
    for file in super::listing(&dir)? {
        let name = file.strip_suffix(".spread.json").unwrap_or(&file);
        let text = fs::read_to_string(dir.join(&file))?;
        all.insert(name.to_owned(), text.into());
    }
    Ok(serde_json::to_vec(&all)?)
}

/// The script of the worker; a classic script, so that every browser can start
/// it from a blob too.
pub(super) fn worker() -> Result<Vec<u8>> {
    bundle("src/worker", &["--format=iife".to_owned()])
}

/// The script of the worker that makes papers.
pub(super) fn outputs_worker() -> Result<Vec<u8>> {
    bundle("src/outputs-worker", &["--format=iife".to_owned()])
}

/// The service worker that keeps `files` as one revision, and those of `later`
/// once the page asks for it.
pub(super) fn service_worker(
    files: &[String],
    later: &[String],
    revision: &str,
) -> Result<Vec<u8>> {
    let [files, later] = [files, later].map(serde_json::to_string);
    let (files, later) = (files?, later?);
    bundle(
        "src/service-worker",
        &[
            "--format=iife".to_owned(),
            format!("--define:FILES={files}"),
            format!("--define:LATER={later}"),
            define("REVISION", revision),
        ],
    )
}

/// The style sheet.
pub(super) fn style() -> Result<Vec<u8>> {
    bundle("style.css", &[])
}

fn define(name: &str, value: &str) -> String {
    format!("--define:{name}={}", serde_json::Value::from(value))
}

/// Bundles and shrinks what starts at `entry`, a path under www.
fn bundle(entry: &str, more: &[String]) -> Result<Vec<u8>> {
    let flags = "--bundle --minify --format=esm --target=es2022 --charset=utf8 \
                 --legal-comments=none --log-level=warning --jsx=automatic \
                 --jsx-import-source=preact";
    let mut command = run::command(tools::npm_program("esbuild"), &[]);
    command
        .arg(format!("./{entry}"))
        .args(flags.split_whitespace())
        .args(more)
        .current_dir(place::www());
    let bundled = run::output(&mut command).with_context(|| format!("bundling {entry}"))?;
    Ok(bundled.into_bytes())
}
