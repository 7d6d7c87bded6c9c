package gapwise.server.cli;

import java.util.Optional;
import picocli.CommandLine.IVersionProvider;

/** The version of the program, from the manifest of its jar. */
public final class Version implements IVersionProvider {
  /** Such as 0.1.0; "development" when run from classes. */
  static final String NUMBER =
      Optional.ofNullable(Version.class.getPackage().getImplementationVersion())
          .orElse("development");

  @Override
  public String[] getVersion() {
    return new String[] {"Gapwise " + NUMBER};
  }
}
