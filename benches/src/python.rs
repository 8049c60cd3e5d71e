//! Runs the Python scripts beside this package.

use std::error::Error;
use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::Command;

use serde_json::Value;

type Outcome<T> = Result<T, Box<dyn Error>>;

/// The Python that has the reference libraries.
pub struct Python {
    program: PathBuf,
    scripts: PathBuf,
}

impl Python {
    /// The one that `./check` makes in `.tools/venv`, or that `UNDERFOOT_PYTHON` names.
    ///
    /// # Errors
    /// There is none, with how to make one.
    #[expect(clippy::disallowed_methods, reason = "a benchmark is told by its environment which Python to run")]
    pub fn find() -> Outcome<Self> {
        let package = Path::new(env!("CARGO_MANIFEST_DIR"));
        let program =
            std::env::var("UNDERFOOT_PYTHON").map_or_else(|_| package.join("../.tools/venv/bin/python"), PathBuf::from);
        if program.exists() {
            Ok(Self { program, scripts: package.join("python") })
        } else {
            Err(format!(
                "no Python at {}. Make it with ./check, or with\n  python3 -m venv .tools/venv && .tools/venv/bin/pip \
                 install -r reference/requirements.txt\nor name one that has those libraries in UNDERFOOT_PYTHON",
                program.display()
            )
            .into())
        }
    }

    /// The last line a script prints, which is JSON.
    ///
    /// # Errors
    /// The script fails, with what it says, or prints no JSON.
    pub fn run<A: AsRef<OsStr>>(&self, script: &str, arguments: &[A]) -> Outcome<Value> {
        let said = Command::new(&self.program)
            .arg(self.scripts.join(script))
            .args(arguments)
            // Settings that a sandbox may make to hide the processor's abilities would slow Python down.
            .env_remove("OPENBLAS_CORETYPE")
            .env_remove("OPENBLAS_L2_SIZE")
            .output()?;
        if !said.status.success() {
            return Err(format!("{script}: {}", String::from_utf8_lossy(&said.stderr)).into());
        }
        let text = String::from_utf8(said.stdout)?;
        Ok(serde_json::from_str(text.lines().last().ok_or("nothing printed")?)?)
    }
}

/// A number of an object.
///
/// # Errors
/// There is none of that name.
pub fn number(value: &Value, key: &str) -> Outcome<f64> {
    value[key].as_f64().ok_or_else(|| format!("no number {key} in {value}").into())
}
