package gapwise.server.page;

import java.util.function.BooleanSupplier;

/** Makes the frame of a page. */
public final class Sites {
  private final Assets assets;
  private final BooleanSupplier invented;
  private final String version;

  /**
   * @param assets style and script
   * @param invented whether any study of the evidence base is invented
   * @param version version of the program
   */
  public Sites(Assets assets, BooleanSupplier invented, String version) {
    this.assets = assets;
    this.invented = invented;
    this.version = version;
  }

  /** The frame of one page. */
  Site of(String title, Site.Section section) {
    return new Site(title, section, invented.getAsBoolean(), assets, version);
  }
}
