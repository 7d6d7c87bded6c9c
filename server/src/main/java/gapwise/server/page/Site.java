package gapwise.server.page;

import gapwise.server.address.PagePaths;
import gapwise.server.home.Notice;
import java.util.List;
import java.util.Objects;

/**
 * What every page shares.
 *
 * @param title title of the page
 * @param section the part of the tool that it belongs to
 * @param invented whether any study of the evidence base is invented, which every page then says
 * @param notices what must be known of the evidence base, such as that a record is damaged
 * @param assets style and script
 * @param version version of the program
 */
public record Site(
    String title,
    Section section,
    boolean invented,
    List<Notice> notices,
    Assets assets,
    String version) {
  public Site {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(section, "section");
    notices = List.copyOf(notices);
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
