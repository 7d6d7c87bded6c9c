package gapwise.server.page;

import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/** Makes the frame of a page. */
public final class Sites {
  private final Assets assets;
  private final BooleanSupplier invented;
  private final Supplier<Optional<String>> notice;
  private final String version;

  /**
   * @param assets style and script
   * @param invented whether any study of the evidence base is invented
   * @param notice what must be known of the state that is shown; empty for nothing
   * @param version version of the program
   */
  public Sites(
      Assets assets, BooleanSupplier invented, Supplier<Optional<String>> notice, String version) {
    this.assets = assets;
    this.invented = invented;
    this.notice = notice;
    this.version = version;
  }

  /** The frame of one page. */
  public Site of(String title, Site.Section section) {
    return new Site(title, section, invented.getAsBoolean(), notice.get(), assets, version);
  }
}
