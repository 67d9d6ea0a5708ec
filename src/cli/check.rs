pub fn check(_: &super::args::Check) -> Result<(), super::exit::Failure> {
    todo!()
}
