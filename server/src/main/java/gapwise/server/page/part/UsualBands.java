package gapwise.server.page.part;

import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.LengthBand;
import java.util.List;
import java.util.Map;

/** The bands of missing length that every form offers at one click, worded once. */
final class UsualBands {
  private static final List<UsualBand> ALL =
      LengthBand.USUAL.stream()
          .map(band -> new UsualBand(band.label(), band.in(new Address(Map.of()))))
          .toList();

  private UsualBands() {}

  /** A band and what an address has for it. */
  private record UsualBand(String label, Address ends) {
    FilterForm.Band in(String path, Address open, Address address) {
      boolean chosen =
          ends.first("from").equals(address.first("from"))
              && ends.first("to").equals(address.first("to"));
      return new FilterForm.Band(label, open.at(path, ends), chosen);
    }
  }

  /**
   * The bands beside an address at its first lines.
   *
   * @param path of the page
   */
  static List<FilterForm.Band> of(String path, Address address) {
    Address open = address.without("match", Filters.UNSIZED).without(List.of("from", "to"));
    return ALL.stream().map(band -> band.in(path, open, address)).toList();
  }
}
