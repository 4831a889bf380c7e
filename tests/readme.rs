//! The pages say what is true: commands run, forms are read, signs are shown, paths exist.

use assert_cmd::Command;
use leverwright::draw::draw;
use leverwright::lesson::built_in;
use leverwright::session::Session;
use leverwright::text::Words;
use std::fs;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn page(name: &str) -> String {
    fs::read_to_string(root().join(name)).unwrap()
}

/// The lines inside the blocks of a language, such as `console`.
fn blocks(page: &str, language: &str) -> Vec<String> {
    let open = format!("```{language}");
    let mut inside = false;
    let mut lines = Vec::new();
    for line in page.lines() {
        if line.starts_with("```") {
            inside = line == open;
        } else if inside {
            lines.push(line.to_owned());
        }
    }
    lines
}

/// What stands in single backticks, outside blocks.
fn in_backticks(text: &str) -> Vec<String> {
    let outside: String = text
        .split("```")
        .step_by(2)
        .flat_map(|part| [part, "\n"])
        .collect();
    outside
        .lines()
        .flat_map(|line| line.split('`').skip(1).step_by(2))
        .map(str::to_owned)
        .collect()
}

/// The rows of the table that begins with this heading.
fn table(page: &str, heading: &str) -> Vec<Vec<String>> {
    page.lines()
        .skip_while(|line| *line != heading)
        .skip(2)
        .take_while(|line| line.starts_with('|'))
        .map(|line| {
            line.trim_matches('|')
                .split('|')
                .map(|cell| cell.trim().to_owned())
                .collect()
        })
        .collect()
}

fn run(folder: &Path, arguments: &[&str]) -> (Option<i32>, String, String) {
    let output = Command::new(env!("CARGO_BIN_EXE_leverwright"))
        .current_dir(folder)
        .env_remove("LEVERWRIGHT_SAVES")
        .arg("--saves")
        .arg(folder.join("saves"))
        .args(arguments)
        .write_stdin("")
        .output()
        .unwrap();
    (
        output.status.code(),
        String::from_utf8(output.stdout).unwrap(),
        String::from_utf8(output.stderr).unwrap(),
    )
}

/// The problem file that lessons/README.md shows.
fn example_problem() -> String {
    let blocks = blocks(&page("lessons/README.md"), "json").join("\n");
    assert!(blocks.contains("\"model\""), "{blocks}");
    blocks
}

#[test]
fn every_command_of_the_readme_runs() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("my-problem.json"), example_problem()).unwrap();
    let lesson = root().join("lessons/counter.json");
    fs::copy(lesson, folder.path().join("my-lesson.json")).unwrap();
    let (_, solved, _) = run(folder.path(), &["solve", "mast", "--seed", "7", "--json"]);
    let solved: serde_json::Value = serde_json::from_str(&solved).unwrap();
    let code = solved["code"].as_str().unwrap().to_owned();
    let mut seen = 0;
    for line in blocks(&page("README.md"), "console") {
        let command = line.split("  ").next().unwrap();
        let Some(arguments) = command.strip_prefix("leverwright ") else {
            continue;
        };
        let arguments: Vec<&str> = arguments
            .split_whitespace()
            .map(|word| if word == "CODE" { code.as_str() } else { word })
            .collect();
        let (status, text, talk) = run(folder.path(), &arguments);
        assert_eq!((status, talk.as_str()), (Some(0), ""), "{command}\n{text}");
        assert!(text.len() > 25, "{command}\n{text}");
        seen += 1;
    }
    assert!(seen >= 6, "only {seen} commands");
}

/// No page promises a command that the program does not have.
#[test]
fn every_command_on_the_pages_is_there() {
    let folder = tempfile::tempdir().unwrap();
    let mut seen = 0;
    for name in ["README.md", "DEVELOPERS.md", "lessons/README.md"] {
        let text = page(name);
        let told = in_backticks(&text).into_iter();
        for line in told.chain(blocks(&text, "console")) {
            let word = line
                .strip_prefix("leverwright ")
                .and_then(|rest| rest.split_whitespace().find(|word| !word.starts_with('-')));
            if let Some(command) = word {
                let (status, _, talk) = run(folder.path(), &[command, "--help"]);
                assert_eq!(status, Some(0), "{name}: {line}\n{talk}");
                seen += 1;
            }
        }
    }
    assert!(seen >= 8, "only {seen} commands");
    assert_eq!(run(folder.path(), &["frobnicate", "--help"]).0, Some(2));
}

#[test]
fn the_two_commands_open_the_page_and_the_gate_runs_the_tests() {
    let first: Vec<String> = blocks(&page("README.md"), "console");
    assert_eq!(first[..2], ["cargo run --release", "cargo test"]);
    assert!(
        page(".ci/run")
            .lines()
            .any(|line| line.starts_with("cargo test"))
    );
}

/// A form in the table is readable in some lesson, where its names stand for something.
#[test]
fn every_form_of_the_readme_is_read() {
    let mut sessions: Vec<Session> = built_in()
        .iter()
        .flat_map(|lesson| (1..8).map(|seed| draw(lesson, seed, "en").unwrap().problem))
        .map(|problem| Session::start(problem, None, Words::english()).unwrap())
        .collect();
    for session in &mut sessions {
        session.submit("skip");
        session.submit("skip");
    }
    let readable = |form: &str| {
        sessions
            .iter()
            .any(|session| session.preview(form).is_some())
    };
    assert!(!readable("W1 is ("), "anything is read");
    let rows = table(&page("README.md"), "| you want | you type |");
    assert!(rows.len() >= 6, "{rows:?}");
    for form in rows.iter().flat_map(|row| in_backticks(&row[1])) {
        assert!(readable(&form), "{form} is not read");
    }
}

#[test]
fn every_sign_of_the_readme_is_shown() {
    let theme = page("src/screen/theme.rs");
    let rows = table(&page("README.md"), "| sign | plain | what it says |");
    assert_eq!(rows.len(), 8);
    for row in rows {
        let pair = format!("(\"{}\", \"{}\")", row[0], row[1].trim_matches('`'));
        assert!(theme.contains(&pair), "{pair} is not a sign of the screen");
    }
}

#[test]
fn every_word_of_the_readme_that_steers_is_understood() {
    let text = page("README.md");
    let line = text
        .lines()
        .find(|line| line.starts_with("Always understood"))
        .unwrap();
    let words = Words::english();
    let known: Vec<String> = words
        .keys()
        .filter(|key| key.starts_with("command."))
        .flat_map(|key| {
            let all = words.word(key);
            all.split(',')
                .map(|word| word.trim().to_owned())
                .collect::<Vec<_>>()
        })
        .collect();
    let said = in_backticks(line);
    assert!(said.len() >= 9, "{said:?}");
    for word in said {
        assert!(known.contains(&word.to_lowercase()), "{word}");
    }
}

/// Whatever looks like a path of the project on these pages is there.
#[test]
fn every_path_on_the_pages_exists() {
    const FOLDERS: [&str; 8] = [
        "src/", "tests/", "lessons/", "benches/", ".ci/", "reading/", "judge/", "screen/",
    ];
    for name in ["README.md", "DEVELOPERS.md"] {
        let text = page(name);
        let linked = text
            .split("](")
            .skip(1)
            .filter_map(|after| after.split(')').next())
            .filter(|link| !link.contains("://"))
            .map(str::to_owned);
        let told = in_backticks(&text).into_iter().filter(|path| {
            FOLDERS.iter().any(|folder| path.starts_with(folder)) && !path.contains('<')
        });
        for path in linked.chain(told) {
            let there = root().join(&path).exists() || root().join("src").join(&path).exists();
            assert!(there, "{name} names {path}");
        }
    }
}

#[test]
fn the_map_for_developers_has_the_rooms_of_the_library() {
    let rows = table(&page("DEVELOPERS.md"), "| room | what lives there |");
    let mut told: Vec<String> = rows
        .iter()
        .map(|row| row[0].trim_matches('`').to_owned())
        .collect();
    let library = page("src/lib.rs");
    let mut rooms: Vec<String> = library
        .lines()
        .filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'))
        .map(str::to_owned)
        .collect();
    told.sort();
    rooms.sort();
    assert_eq!(told, rooms);
}
