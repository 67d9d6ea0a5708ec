pub fn run(_: &super::args::Run) -> Result<(), super::exit::Failure> {
    todo!()
}
