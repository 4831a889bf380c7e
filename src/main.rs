//! Arguments in, exit code out; everything else is in the library.

fn main() -> std::process::ExitCode {
    leverwright::cli::main()
}
