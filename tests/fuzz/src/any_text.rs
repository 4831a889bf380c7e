//! Any text, as lines at any problem.
#![no_main]

mod common;

use common::{Scene, enter, scenes};
use libfuzzer_sys::fuzz_target;

thread_local! {
    /// Built once; a session keeps what it judged last, and stays in its thread.
    static SCENES: Vec<Scene> = scenes();
}

fuzz_target!(|data: &[u8]| {
    let Some((first, rest)) = data.split_first() else {
        return;
    };
    SCENES.with(|scenes| {
        let scene = &scenes[usize::from(*first >> 1) % scenes.len()];
        let session = if first & 1 == 0 { &scene.free } else { &scene.guided };
        let text = String::from_utf8_lossy(rest).into_owned();
        enter(session, text.split('\n').take(6).map(ToOwned::to_owned));
    });
});
