//! Installing by the system's package manager, and saying what to install where that cannot be done.

use std::process::Command;

use crate::failure::{Failure, Outcome};
use crate::process;

/// Installs Debian packages.
///
/// # Errors
/// Without apt-get or without the rights to use it, naming the packages; and when apt-get fails.
pub fn by_apt(packages: &[&str], purpose: &str) -> Outcome<()> {
    let list = packages.join(" ");
    let Some(apt) = process::on_path("apt-get") else {
        return Err(Failure::new(format!(
            "{purpose} is missing and there is no apt-get here to install it. Install what Debian calls: {list}"
        )));
    };
    if process::answer(Command::new("id").arg("-u")).as_deref() != Some("0") {
        return Err(Failure::new(format!(
            "{purpose} is missing and installing it needs an administrator. Run:\n    sudo apt-get install {list}"
        )));
    }
    println!("  installing {purpose}: {list}");
    let apt = || {
        let mut command = Command::new(&apt);
        // Another installation may be running: wait for it. And never ask anything.
        command.env("DEBIAN_FRONTEND", "noninteractive").args(["-qq", "-o", "DPkg::Lock::Timeout=600"]);
        command
    };
    // Old lists may still do; if they do not, the installation says so.
    if let Err(failure) = process::run(apt().arg("update"), "refreshing the package lists") {
        println!("  {failure}; going on with the lists at hand");
    }
    let mut install = apt();
    install.args(["install", "-y", "--no-install-recommends", "-o", "Dpkg::Use-Pty=0"]).args(packages);
    process::run(&mut install, &format!("installing {list}"))
}
