package gapwise.server.job.reference;

import java.util.Arrays;
import java.util.Optional;

/** Files that can be taken from what was found. */
public enum ReferenceFileOut {
  PROPOSALS("proposals.csv", "text/csv; charset=utf-8"),
  RIS("references.ris", "application/x-research-info-systems; charset=utf-8"),
  CSL_JSON("references.json", "application/vnd.citationstyles.csl+json");

  private final String file;
  private final String type;

  ReferenceFileOut(String file, String type) {
    this.file = file;
    this.type = type;
  }

  /** Its name. */
  public String file() {
    return file;
  }

  /** Its media type. */
  public String type() {
    return type;
  }

  /** The one of this name. */
  public static Optional<ReferenceFileOut> named(String file) {
    return Arrays.stream(values()).filter(one -> one.file.equals(file)).findFirst();
  }
}
