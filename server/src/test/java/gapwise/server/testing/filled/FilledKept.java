package gapwise.server.testing.filled;

import gapwise.server.testing.PageStates;

/** Questions and a sheet kept, of which a study went afterwards. */
final class FilledKept {
  private static final String UNION = "outcome=primary-union&method=bone-transport";
  private static final String ID = "/kept/([0-9a-f]{12})";

  private FilledKept() {}

  static void into(Filling filling) throws Exception {
    String union = keep(filling, "/pooled", UNION, "Primary union after bone transport");
    keep(
        filling,
        "/compare",
        "method=bone-transport&method=induced-membrane&bone=tibia&infected=yes&from=6&to=10",
        "Infected tibia, 6 to 10 cm: what to tell the family at the conference on Thursdays");
    String sheet = PageStates.byName().get("sheet: six methods").replaceFirst("^/sheet\\?", "");
    keep(filling, "/sheet", sheet, "Sheet for the first talk");
    keep(filling, "/pooled", "outcome=flap-loss&method=allograft", "A question without an answer");
    filling.post("/studies/invented-03/withdraw", "who", "AB", "why", "told twice", "seen", "1");
    filling.shows("kept questions: some are stale", "/kept");
    filling.shows("kept questions: numbers moved", "/kept/" + union + "?whole=yes");
    filling.shows("pooled: kept and stale", "/pooled?" + UNION + "&kept=" + union);
    filling.shows("studies: one withdrawn", "/studies/invented-03/versions");
  }

  private static String keep(Filling filling, String page, String query, String title)
      throws Exception {
    String led = filling.post("/kept", "page", page, "query", query, "title", title, "who", "AB");
    return led.contains("/kept/")
        ? Filling.foundIn(ID, led)
        : Filling.foundIn(ID, filling.running().get("/kept").body());
  }
}
