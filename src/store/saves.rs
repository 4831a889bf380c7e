//! Which folder is the saves folder.

use etcetera::BaseStrategy;
use std::ffi::OsStr;
use std::path::{Path, PathBuf};

/// What may decide where saves go.
#[derive(Clone, Copy, Debug)]
pub struct Wishes<'a> {
    /// The folder given with `--saves`.
    pub option: Option<&'a Path>,
    /// The value of the environment variable `LEVERWRIGHT_SAVES`; an empty one does not count.
    pub variable: Option<&'a OsStr>,
    /// The folder in which the program was started.
    pub started_in: &'a Path,
    /// The platform's data folder for the program, from [`data_folder`].
    pub data_folder: Option<&'a Path>,
}

/// The saves folder: what `--saves` says, else the environment variable, else `saves` in the
/// folder where the program was started if `lessons` and `saves` both stand there, else `saves` in
/// the data folder. On a platform without a data folder, `saves` where the program was started.
pub fn saves_folder(wishes: &Wishes<'_>) -> PathBuf {
    let variable = wishes.variable.filter(|value| !value.is_empty());
    if let Some(folder) = wishes.option.or(variable.map(Path::new)) {
        return wishes.started_in.join(folder);
    }
    let here = wishes.started_in.join("saves");
    let at_home = here.is_dir() && wishes.started_in.join("lessons").is_dir();
    match wishes.data_folder {
        Some(data_folder) if !at_home => data_folder.join("saves"),
        _ => here,
    }
}

/// The platform's folder for this program's data, if the platform has one.
pub fn data_folder() -> Option<PathBuf> {
    let strategy = etcetera::base_strategy::choose_native_strategy().ok()?;
    Some(strategy.data_dir().join("leverwright"))
}
