//! Problems of a learner's own, as problem files in a folder beside the journals.

use super::trouble::{Doing, StoreTrouble};
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// Their folder.
const PROBLEMS: &str = "problems";

/// Longest name, in characters.
const LONGEST_NAME: usize = 40;

/// Why a problem is not kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotKept {
    /// The name is empty, too long, or has other characters than letters, digits, blanks, hyphens
    /// and underscores.
    Name,
    /// There is one of that name already.
    Taken {
        /// Where.
        place: PathBuf,
    },
    /// The file or its folder cannot be written.
    Trouble(StoreTrouble),
}

/// Writes a problem file under a name of the learner's and tells where it is. Nothing that is there
/// already is changed.
pub(super) fn keep(learner: &Path, name: &str, json: &str) -> Result<PathBuf, NotKept> {
    let name = file_name(name).ok_or(NotKept::Name)?;
    let folder = learner.join(PROBLEMS);
    fs::create_dir_all(&folder)
        .map_err(|error| NotKept::Trouble(StoreTrouble::new(Doing::MakeFolder, &folder, &error)))?;
    let place = folder.join(format!("{name}.json"));
    let trouble =
        |error: io::Error| NotKept::Trouble(StoreTrouble::new(Doing::WriteProblem, &place, &error));
    let mut file = match File::create_new(&place) {
        Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {
            return Err(NotKept::Taken { place });
        }
        opened => opened.map_err(trouble)?,
    };
    let written = file
        .write_all(format!("{json}\n").as_bytes())
        .and_then(|()| file.sync_all());
    written.map_err(|error| {
        // Best effort: a half-written file under that name would be in the way.
        let _ = fs::remove_file(&place);
        trouble(error)
    })?;
    Ok(place)
}

/// The name as a part of a path; `None` unless every system takes it.
fn file_name(name: &str) -> Option<String> {
    let name = name.trim().trim_end_matches(".json").trim();
    let fits = |c: char| c.is_alphanumeric() || matches!(c, '-' | '_' | ' ');
    let good = name.starts_with(char::is_alphanumeric)
        && name.chars().all(fits)
        && name.chars().count() <= LONGEST_NAME;
    good.then(|| name.split_whitespace().collect::<Vec<_>>().join("-"))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn a_problem_is_kept_once_under_a_name_that_every_system_takes() {
        let folder = tempfile::tempdir().unwrap();
        let place = keep(folder.path(), " my plank ", "{}").unwrap();
        assert!(place.ends_with("problems/my-plank.json"));
        assert_eq!(fs::read_to_string(&place).unwrap(), "{}\n");
        let again = keep(folder.path(), "my plank", "[]");
        assert_eq!(
            again,
            Err(NotKept::Taken {
                place: place.clone()
            })
        );
        assert_eq!(fs::read_to_string(&place).unwrap(), "{}\n");
        for name in [
            "",
            "..",
            "a/b",
            "a\\b",
            "-x",
            "a:b",
            "c\u{7}",
            &"x".repeat(41),
        ] {
            assert_eq!(
                keep(folder.path(), name, "{}"),
                Err(NotKept::Name),
                "{name}"
            );
        }
    }
}
