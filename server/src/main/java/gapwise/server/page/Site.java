package gapwise.server.page;

import gapwise.server.address.PagePaths;
import java.util.Objects;
import java.util.Optional;

/**
 * What every page shares.
 *
 * @param title title of the page
 * @param section the part of the tool that it belongs to
 * @param invented whether any study of the evidence base is invented, which every page then says
 * @param notice what must be known of the state that is shown, such as that it is not the newest
 * @param assets style and script
 * @param version version of the program
 */
public record Site(
    String title,
    Section section,
    boolean invented,
    Optional<String> notice,
    Assets assets,
    String version) {
  public Site {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(section, "section");
    Objects.requireNonNull(notice, "notice");
    Objects.requireNonNull(assets, "assets");
    Objects.requireNonNull(version, "version");
  }

  /** The parts of the tool in the order of the navigation. */
  public enum Section {
    EVIDENCE(PagePaths.EVIDENCE, "Evidence"),
    STUDIES(PagePaths.STUDIES, "Studies"),
    POOLED(PagePaths.POOLED, "Pooled results"),
    BY_SIZE(PagePaths.BY_SIZE, "By size"),
    MAP(PagePaths.MAP, "Gaps"),
    CASE(PagePaths.CASE, "Place a case"),
    CLAIM(PagePaths.CLAIM, "Check a claim"),
    IMPORT(PagePaths.IMPORT, "Add studies"),
    METHOD(PagePaths.METHOD, "How it is worked out"),
    NONE("", "");

    private final String href;
    private final String label;

    Section(String href, String label) {
      this.href = href;
      this.label = label;
    }

    public String href() {
      return href;
    }

    public String label() {
      return label;
    }
  }
}
