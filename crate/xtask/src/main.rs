//! Builds, serves, tests, measures and pictures Overspread.
//!
//! Everything a contributor or a CI job runs is a subcommand here, so the
//! logic is written once, in Rust, and pinned by `Cargo.lock`.

mod advisories;
mod bench;
mod deep;
mod fuzz;
mod mutants;
mod place;
mod run;
mod scripts;
mod serve;
mod site;
mod test;
mod tools;

use std::ffi::OsString;
use std::path::PathBuf;

use anyhow::Result;
use clap::{Parser, Subcommand};

/// Builds, serves, tests, measures and pictures Overspread.
#[derive(Parser)]
#[command(name = "cargo xtask", disable_help_subcommand = true)]
struct Arguments {
    #[command(subcommand)]
    task: Task,
}

#[derive(Subcommand)]
enum Task {
    /// Build the page into `dist/`
    Build,
    /// Build the page and serve it on this machine
    Serve {
        /// Port to listen on; 0 takes any free one
        #[arg(long, default_value_t = 8080)]
        port: u16,
        /// Serve this directory as it stands, building nothing
        #[arg(long, value_name = "DIR")]
        dir: Option<PathBuf>,
    },
    /// Build the page and the single file `dist/overspread.html`
    Dist {
        /// Speak otherwise, in target/words-*, and leave `dist/` as it is
        #[arg(long, default_value = "plain")]
        words: site::Words,
    },
    /// Run every test, or only the stages named
    Test {
        /// Only these stages; all when none is named
        stages: Vec<test::Stage>,
    },
    /// Measure times natively and in the browser; writes tests/reports/bench.md
    Bench,
    /// Redraw the pictures of the README and the icons
    Shots,
    /// Run what takes long, in stages of its own
    Deep(deep::Wish),
    /// Run one compiled wasm test file in a browser (called by cargo)
    #[command(hide = true, disable_help_flag = true)]
    WasmRunner {
        #[arg(trailing_var_arg = true, allow_hyphen_values = true)]
        arguments: Vec<OsString>,
    },
}

fn main() -> Result<()> {
    match Arguments::parse().task {
        Task::Build => site::build().map(done),
        Task::Serve { port, dir } => {
            let dir = match dir {
                Some(dir) => dir,
                None => site::build()?,
            };
            serve::forever(&dir, port)
        }
        Task::Dist {
            words: site::Words::Plain,
        } => site::build_with_single_file().map(done),
        Task::Dist { words } => site::build_speaking(words).map(done),
        Task::Test { stages } => test::all(&stages),
        Task::Bench => bench::run(),
        Task::Shots => scripts::shots(),
        Task::Deep(wish) => deep::all(&wish),
        Task::WasmRunner { arguments } => {
            let program = OsString::from("wasm-bindgen-test-runner");
            wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(
                std::iter::once(program).chain(arguments),
            )
        }
    }
}

fn done(dist: PathBuf) {
    println!("built {}", dist.display());
}
