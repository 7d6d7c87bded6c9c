package gapwise.server.page;

import gapwise.server.home.Notice;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/** Makes the frame of a page. */
public final class Sites {
  private final Assets assets;
  private final BooleanSupplier invented;
  private final Supplier<List<Notice>> notices;
  private final String version;

  /**
   * @param assets style and script
   * @param invented whether any study of the evidence base is invented
   * @param notices what must be known of the evidence base; empty for nothing
   * @param version version of the program
   */
  public Sites(
      Assets assets, BooleanSupplier invented, Supplier<List<Notice>> notices, String version) {
    this.assets = assets;
    this.invented = invented;
    this.notices = notices;
    this.version = version;
  }

  /** The frame of one page. */
  public Site of(String title, Site.Section section) {
    return new Site(title, section, invented.getAsBoolean(), notices.get(), assets, version);
  }
}
