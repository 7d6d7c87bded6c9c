package gapwise.server.testing;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Every page over the demonstration base in the states that one meets and in those that could break
 * its layout: nothing asked, much and little found, nothing found, refused.
 */
public final class PageStates {
  /** A small phone, a phone, a desk and a wide screen, in pixels. */
  public static final int[] WIDTHS = {320, 390, 1280, 1920};

  /**
   * A sheet of A4 within margins of 1 cm at 96 pixels an inch (CSS Values and Units 3, 5.2: 1in is
   * 96px and 2.54cm; ISO 216: 210 mm).
   */
  public static final int PAPER = 718;

  /** Invented prices with all else that costs are reckoned from. */
  public static final String PRICES =
      "&currency=XTS&price-year=2024&horizon-years=20&discount-costs=0.03&discount-effects=0.03"
          + "&death-first-year=0.01&death-growth=1.05&month-in-treatment=500"
          + "&sd-month-in-treatment=100&reoperation=8000&months-awaiting=2&infection=12000"
          + "&months-infected=4&amputation=15000&prosthesis=10000&prosthesis-years=3"
          + "&month-not-healed=300&lost-work-month=2000&months-off-work-after-amputation=6"
          + "&worth-up-to=40000&treatment-bone-transport=20000&sd-treatment-bone-transport=4000"
          + "&treatment-induced-membrane=16000&treatment-primary-amputation=9000";

  private static final String TWO = "?method=bone-transport&method=induced-membrane&from=5&to=7";

  private PageStates() {}

  /** Addresses by what they show. */
  public static Map<String, String> byName() {
    Map<String, String> all = new LinkedHashMap<>();
    all.put("sheet: methods to choose", "/sheet?from=6&to=6&infected=yes");
    all.put(
        "sheet: six methods",
        "/sheet?whole=yes&from=6&to=6&bone=tibia&infected=yes&wish=walking-soon&method=bone-transport"
            + "&method=induced-membrane&method=acute-shortening-lengthening&method=autograft"
            + "&method=printed-scaffold");
    all.put(
        "sheet: weighed and reckoned",
        "/sheet"
            + TWO
            + "&whole=yes&matters-union=10&with=weighing&weigh=union&weigh=infection&with=cost"
            + PRICES);
    all.put(
        "sheet: more than paper holds",
        "/sheet?whole=yes&from=6&to=6&bone=tibia&infected=yes&age=45&smoker=yes&wish=walking-soon"
            + "&method=bone-transport&method=induced-membrane&method=acute-shortening-lengthening"
            + "&method=autograft&method=printed-scaffold&matters-union=10&matters-infection=5"
            + "&matters-full-weight=2&with=weighing&weigh=union&weigh=infection&with=cost"
            + PRICES);
    all.put("first page", "/");
    all.put("compare: nothing asked", "/compare");
    all.put(
        "compare: some methods",
        "/compare?from=6&to=6&infected=yes&segment=43&method=bone-transport&method=induced-membrane"
            + "&age=45&smoker=yes&matters-union=10&whole=yes");
    all.put("compare: all methods", "/compare?from=4&to=8&whole=yes");
    all.put(
        "compare: through other studies",
        "/compare?method=bone-transport&method=induced-membrane&method=printed-scaffold"
            + "&method=vascularised-bone-flap&whole=yes&through=yes");
    all.put("compare: a length nobody reported", "/compare?from=40&to=40&whole=yes");
    all.put("compare: not understood", "/compare?age=old");
    all.put(
        "compare: one number judged", "/compare/judgement?from=4&to=8&judged=bone-transport.union");
    all.put("studies", "/studies");
    all.put("studies: a share", "/studies?outcome=union");
    all.put("studies: a time", "/studies?outcome=time-to-union&from=5&to=8");
    all.put("studies: a rate", "/studies?outcome=unplanned-operations");
    all.put("studies: an outcome at a length", "/studies?outcome=union&from=5&to=8");
    all.put(
        "studies: followed for long", "/studies?outcome=secondary-amputation&follow-up-from=24");
    all.put(
        "studies: every column",
        "/studies?outcome=secondary-amputation&column=missing-bone&column=value&column=patients"
            + "&column=followed&column=extraction&column=year&column=country&column=bones"
            + "&column=infected&column=design");
    all.put("studies: nothing found", "/studies?q=nothing+like+this");
    all.put("study: one group", "/studies/invented-03");
    all.put("study: several groups", "/studies/invented-55");
    all.put("study: judged", "/studies/invented-54");
    all.put(
        "pooled: without serious risk",
        "/pooled?outcome=primary-union&method=bone-transport&risk=low&risk=some&risk=not-rated");
    all.put("pooled: nothing asked", "/pooled");
    all.put("pooled: all methods", "/pooled?outcome=union");
    all.put("pooled: all methods, another union", "/pooled?outcome=primary-union");
    all.put("pooled: all methods, a time", "/pooled?outcome=time-to-union&from=5&to=8");
    all.put("pooled: one method", "/pooled?outcome=union&method=bone-transport");
    all.put("pooled: one series", "/pooled?outcome=union&method=acute-shortening-lengthening");
    all.put("pooled: none found", "/pooled?outcome=flap-loss&method=allograft");
    all.put("weighing: nothing asked", "/compare/weighing" + TWO);
    all.put(
        "weighing: weighed",
        "/compare/weighing"
            + TWO
            + "&asked=yes&weigh=infection&weigh=later-amputation&weigh=full-weight"
            + "&place-later-amputation=1&place-infection=2&least-infection=20&whole=yes");
    all.put(
        "weighing: refused",
        "/compare/weighing"
            + TWO
            + "&asked=yes&weigh=union&weigh=infection&least-union=75&least-infection=50");
    all.put("costs: nothing asked", "/compare/cost" + TWO);
    all.put("costs: reckoned", "/compare/cost" + TWO + "&asked=yes&whole=yes" + PRICES);
    all.put("costs: refused", "/compare/cost" + TWO + "&asked=yes&currency=XTS");
    all.put("by size: a line", "/by-size?outcome=union");
    all.put("by size: a curve of all methods", "/by-size?outcome=union&shape=curve");
    all.put("by size: a curve", "/by-size?outcome=union&shape=curve&method=bone-transport");
    all.put("by size: nothing asked", "/by-size");
    all.put("funnel", "/funnel?outcome=union&method=bone-transport");
    all.put("funnel: too few", "/funnel?outcome=refracture");
    all.put("over time: every method", "/over-time?outcome=time-to-union");
    all.put("over time: two methods", "/over-time?outcome=time-to-union&clock=frame-on");
    all.put(
        "over time: one curve",
        "/over-time?outcome=time-to-union&method=acute-shortening-lengthening&year-from=2020");
    all.put("over time: no curve", "/over-time?outcome=external-fixation-time");
    all.put("over time: nothing asked", "/over-time");
    all.put("over time: no time", "/over-time?outcome=union");
    all.put("map", "/map");
    all.put("map: an outcome", "/map?outcome=union&infected=yes");
    all.put("comparisons", "/map?view=comparisons");
    all.put("claim: nothing asked", "/claim");
    all.put(
        "claim: asked",
        "/claim?a=bone-transport&says=more&outcome=primary-union&b=induced-membrane");
    all.put("claim: refused", "/claim?a=bone-transport&says=more&outcome=union&b=bone-transport");
    all.put(
        "claim: examined",
        "/claim?a=bone-transport&says=more&outcome=primary-union&b=induced-membrane&ways=all");
    all.put("case: nothing asked", "/case");
    all.put("case: its course", "/case?step=course&method=bone-transport&with=cost");
    all.put(
        "case: placed",
        "/case?method=bone-transport&length=6&bone=tibia&infection=active&union=8"
            + "&union-from=definitive-operation&phase-1=temporary-frame&duration-1=8&unit-1=weeks"
            + "&phase-2=in-frame&duration-2=9&phase-3=unsupported&duration-3=4");
    all.put("desk: nothing begun", "/desk");
    all.put("versions of a study", "/studies/invented-03/versions");
    all.put("shared patients", "/overlaps");
    all.put("references: nothing handed in", "/references");
    all.put("references: none kept", "/references/kept");
    all.put("references: no pair", "/references/pairs");
    all.put("screening: nothing kept", "/screening");
    all.put("screening: nothing left", "/screening/read?who=AB");
    all.put("screening: nobody differs", "/screening/apart");
    all.put("review: nothing written", "/review");
    all.put("review: what waits", "/review?who=AB");
    all.put("review: its form", "/review/edit");
    all.put("kept questions: none", "/kept");
    all.put("extraction: nothing open", "/extraction");
    all.put("extraction: no agreement to be told", "/extraction/agreement");
    all.put("import", "/import");
    all.put("method", "/method");
    all.put("people: signing in without accounts", "/sign-in");
    all.put("people: alone", "/me");
    all.put("people: no accounts", "/people");
    all.put("people: who did what", "/people/trail");
    all.put("error: no such page", "/studies/none-of-this-name");
    all.put("error: not understood", "/pooled?outcome=none-of-this-name");
    return all;
  }
}
