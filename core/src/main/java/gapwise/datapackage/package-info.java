/**
 * Files that belong together, as a folder or one archive (ZIP), with a descriptor that names each
 * with its size and SHA-256: a Data Package, version 1, of the open Frictionless standards
 * (specs.frictionlessdata.io/data-package). What the files hold is the business of those who call.
 * Start at {@link gapwise.datapackage.PackageWriter} and {@link gapwise.datapackage.PackageReader}.
 */
package gapwise.datapackage;
