package gapwise.server.page;

import gapwise.server.account.Actor;
import gapwise.server.address.Address;
import gapwise.server.address.CarriedQuestion;
import gapwise.server.home.Notice;
import java.util.List;
import java.util.Optional;
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

  /**
   * The frame of one page.
   *
   * @param address what is asked on it, which goes along to other pages
   */
  public Site of(String title, Place place, Address address) {
    Actor person = Actor.now();
    Navigation ways = Navigation.from(place, place.asked(address), person);
    if (person.way() == Actor.Way.NOBODY) {
      // Before signing in nothing is told of what the evidence base holds.
      return new Site(title, ways, false, List.of(), assets, version, person, Optional.empty());
    }
    return new Site(
        title, ways, isInvented(), notices.get(), assets, version, person, Optional.empty());
  }

  /** The frame of one page that asks nothing. */
  public Site of(String title, Place place) {
    return of(title, place, CarriedQuestion.NONE.address());
  }

  /** Whether any study of the evidence base is invented. */
  public boolean isInvented() {
    return invented.getAsBoolean();
  }
}
