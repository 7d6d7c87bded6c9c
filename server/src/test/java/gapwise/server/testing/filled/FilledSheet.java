package gapwise.server.testing.filled;

import gapwise.server.testing.PageStates;
import java.util.ArrayList;
import java.util.List;

/**
 * A sheet of which everything is filled: a whole patient, six methods, every wish, every difference
 * that matters, weights, prices, what a person settled with a long reason, the day of the last
 * search, and what has changed since it was printed.
 */
final class FilledSheet {
  private static final String TABLE =
      "from=6&to=8&bone=tibia&segment=42&infected=yes&soft-tissue=needs-cover&age=45&smoker=yes"
          + "&diabetes=yes&taken=length&method=bone-transport&method=induced-membrane"
          + "&method=acute-shortening-lengthening&method=autograft&method=printed-scaffold"
          + "&wish=keeping-the-limb&wish=walking-soon&wish=fewer-operations&wish=least-infection"
          + "&wish=short-frame&wish=back-to-work&wish=low-cost&matters-union=10"
          + "&matters-infection=5&matters-later-amputation=2.5&matters-unplanned-operation=10"
          + "&matters-operations=1&matters-frame-time=2&matters-full-weight=2"
          + "&matters-donor-site=10&matters-work=10";

  private static final String WEIGHTS =
      "&with=weighing&weigh=union&weigh=infection&weigh=later-amputation"
          + "&weigh=unplanned-operation&place-union=1&place-infection=2"
          + "&place-later-amputation=3&place-unplanned-operation=4&least-infection=15"
          + "&most-infection=60&least-later-amputation=12.5&worst-union=50&best-union=100";

  private static final String MORE_PRICES =
      "&with=cost&sd-treatment-induced-membrane=3000&sd-reoperation=2000"
          + "&treatment-autograft=7000&treatment-acute-shortening-lengthening=14000"
          + "&treatment-printed-scaffold=18000&sd-treatment-printed-scaffold=2500"
          + "&stages-bone-transport=1&stages-induced-membrane=2&utility-in-treatment=0.5"
          + "&utility-infected=0.4&utility-healed=0.85&utility-not-healed=0.5"
          + "&utility-amputated=0.6&against=bone-transport";

  private static final String SHEET =
      "/sheet?" + TABLE + WEIGHTS + MORE_PRICES + PageStates.PRICES + "&searched=2020-03-01";

  private static final String HIDDEN = "<input type=\"hidden\" name=\"%s\" value=\"([^\"]*)\"";

  private static final String REASON =
      "Every paper told how it chose its patients, and the only one that did not was read again by"
          + " two people, who found no sign that the better half was counted alone.";

  private FilledSheet() {}

  static void into(Filling filling) throws Exception {
    String made = filling.found("made=(\\d+)", SHEET + "&whole=yes");
    filling.post(
        "/studies/invented-06/withdraw", "who", "AB", "why", "told a second time", "seen", "1");
    settle(filling, "bone-transport.union", "Konradin Kestermere Lavenhythe");
    settle(filling, "induced-membrane.union", "AB");
    filling.shows("sheet: everything filled", SHEET + "&whole=yes");
    filling.shows("sheet: everything filled, of old", SHEET + "&whole=yes&made=" + made);
  }

  private static void settle(Filling filling, String judged, String who) throws Exception {
    String page = filling.running().get("/compare/judgement?" + TABLE + "&judged=" + judged).body();
    List<String> fields = new ArrayList<>();
    for (String name : List.of("key", "version", "data")) {
      Filling.allIn(HIDDEN.formatted(name), page)
          .forEach(value -> fields.addAll(List.of(name, value)));
    }
    for (String ground : List.of("inconsistency", "indirectness", "imprecision", "unpublished")) {
      fields.addAll(List.of(ground, "1"));
    }
    fields.addAll(List.of("bias", "0", "reason", REASON, "who", who, "here", "/compare?" + TABLE));
    filling.post("/compare/judgement", fields.toArray(String[]::new));
  }
}
