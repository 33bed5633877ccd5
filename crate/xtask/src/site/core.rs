//! The wasm modules, each with the script that binds it.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use super::digest;
use crate::{place, run, tools};

/// How the module is bound. The page finds the module itself (a file, or packed
/// into the page), so the binding needs no path of its own; after a trap the
/// page starts a fresh instance of the module it has.
const FLAGS: &str = "--target web --omit-default-module-path \
                 --experimental-reset-state-function --remove-name-section --remove-producers-section";

/// How the module is shrunk. Putting a function that is called once in place of
/// its call saves raw bytes, but what is left compresses 8% worse: longer
/// functions have more locals, and the same code no longer reads the same. The
/// low kilobyte of memory is the far end of the stack, which nothing points to.
const SHRINK: &str = "-Oz --converge --one-caller-inline-max-function-size=0 \
                      --low-memory-unused --strip-target-features";

/// A module of the page.
#[derive(Clone, Copy)]
pub(super) struct Module {
    /// The crate it is compiled from.
    package: &'static str,
    /// What it is called among the page's files.
    pub(super) name: &'static str,
}

/// What the first picture needs.
pub(super) const CORE: Module = Module {
    package: "web",
    name: "core",
};

/// What papers need, fetched when one is asked for.
pub(super) const OUTPUTS: Module = Module {
    package: "outputs-web",
    name: "outputs",
};

/// What shows the picture of a link before the core is there.
pub(super) const EARLY: Module = Module {
    package: "early-web",
    name: "early",
};

/// Compiles, binds and shrinks a module, with features not shrunk; leaves its `.js` and `.d.ts` for the
/// page to import and returns it.
pub(super) fn build(module: Module, features: &[&str]) -> Result<Vec<u8>> {
    tools::wasm_target()?;
    let mut compile = run::cargo(&["rustc", "--profile", "page", "--package", module.package]);
    compile.args(["--target", tools::WASM, "--features", &features.join(",")]);
    // A library that tests can link as well is compiled with less left out, and
    // all it needs once more than for the other modules.
    compile.args(["--crate-type", "cdylib"]);
    run::succeed(&mut compile)?;
    let file = module.package.replace('-', "_") + ".wasm";
    let compiled = place::target().join(tools::WASM).join("page").join(file);

    // Binding and shrinking take longer than the rest together: leave each out
    // where the compiled module is the one it last saw.
    let digest = digest::short(&[fs::read(&compiled)?, FLAGS.into(), SHRINK.into()].concat());
    let done = |stamp: &Path| fs::read_to_string(stamp).is_ok_and(|last| last == digest);
    let bound = generated(module, ".bound");
    if !done(&bound) {
        bind(module, &compiled)?;
        fs::write(bound, &digest)?;
    }
    if !features.is_empty() {
        // Only looked at: it need not be small.
        return fs::read(generated(module, "_bg.wasm")).context("the bound module is missing");
    }
    let shrunk = generated(module, ".stamp");
    if !done(&shrunk) || !optimised(module).exists() {
        optimise(module)?;
        fs::write(shrunk, &digest)?;
    }
    fs::read(optimised(module)).context("the optimised module is missing")
}

/// Where the finished module lies.
pub(super) fn optimised(module: Module) -> PathBuf {
    generated(module, ".wasm")
}

fn generated(module: Module, rest: &str) -> PathBuf {
    place::generated().join(module.name.to_owned() + rest)
}

fn bind(module: Module, compiled: &Path) -> Result<()> {
    let out = place::generated();
    fs::create_dir_all(&out)?;
    let mut arguments = vec!["wasm-bindgen".into(), compiled.as_os_str().to_owned()];
    arguments.extend(["--out-dir".into(), out.into_os_string()]);
    arguments.extend(["--out-name".into(), module.name.into()]);
    arguments.extend(FLAGS.split_whitespace().map(Into::into));
    wasm_bindgen_cli::wasm_bindgen::run_cli_with_args(arguments).context("wasm-bindgen failed")
}

fn optimise(module: Module) -> Result<()> {
    // The module names the features it uses; asking for all of them would let
    // wasm-opt write what browsers do not read yet.
    let mut command = run::command(tools::npm_program("wasm-opt"), &[]);
    command
        .arg(generated(module, "_bg.wasm"))
        .args(SHRINK.split_whitespace())
        .arg("-o")
        .arg(optimised(module));
    run::succeed(&mut command)
}
