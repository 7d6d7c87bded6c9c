package gapwise.server.address;

/** Where the pages are, since each links to others. */
public final class PagePaths {
  public static final String EVIDENCE = "/";
  public static final String ASK = "/ask";
  public static final String COMPARE = "/compare";
  public static final String COMPARE_TABLE = "/compare/table";
  public static final String COMPARE_THROUGH = "/compare/through";
  public static final String COMPARE_FINDINGS_CSV = "/compare/findings.csv";
  public static final String COMPARE_FINDINGS_WORD = "/compare/findings.docx";
  public static final String COMPARE_JUDGEMENT = "/compare/judgement";
  public static final String SHEET = "/sheet";
  public static final String SHEET_SHOWN = "/sheet/shown";
  public static final String SHEET_PDF = "/sheet.pdf";
  public static final String SHEET_WORD = "/sheet.docx";
  public static final String COMPARE_WEIGHING = "/compare/weighing";
  public static final String COMPARE_WEIGHING_RESULT = "/compare/weighing/result";
  public static final String COMPARE_COST = "/compare/cost";
  public static final String COMPARE_COST_RESULT = "/compare/cost/result";
  public static final String STUDIES = "/studies";
  public static final String POOLED = "/pooled";
  public static final String POOLED_RESULT = "/pooled/result";
  public static final String FUNNEL = "/funnel";
  public static final String FUNNEL_RESULT = "/funnel/result";
  public static final String BY_SIZE = "/by-size";
  public static final String BY_SIZE_RESULT = "/by-size/result";
  public static final String OVER_TIME = "/over-time";
  public static final String OVER_TIME_RESULT = "/over-time/result";
  public static final String MAP = "/map";
  public static final String CASE = "/case";
  public static final String CASE_RESULT = "/case/result";
  public static final String CLAIM = "/claim";
  public static final String CLAIM_RESULT = "/claim/result";
  public static final String DESK = "/desk";
  public static final String UNTIDY = "/colleague-sheet";
  public static final String OVERLAPS = "/overlaps";
  public static final String REFERENCES = "/references";
  public static final String KEPT_REFERENCES = "/references/kept";
  public static final String REFERENCE_PAIRS = "/references/pairs";
  public static final String SCREENING = "/screening";
  public static final String SCREENING_READ = "/screening/read";
  public static final String SCREENING_APART = "/screening/apart";
  public static final String REVIEW = "/review";
  public static final String REVIEW_EDIT = "/review/edit";
  public static final String KEPT = "/kept";
  public static final String EXTRACTION = "/extraction";
  public static final String EXTRACTION_AGREEMENT = "/extraction/agreement";
  public static final String SEARCHES_CSV = "/references/searches.csv";
  public static final String MARK_RETRACTED = "/references/mark";
  public static final String PAPERS = "/papers";
  public static final String PICTURES = "/pictures";
  public static final String IMPORT = "/import";
  public static final String METHOD = "/method";
  public static final String SIGN_IN = "/sign-in";
  public static final String SIGN_OUT = "/sign-out";
  public static final String OWN = "/me";
  public static final String PEOPLE = "/people";
  public static final String TRAIL = "/people/trail";
  public static final String TRAIL_CSV = "/people/trail.csv";
  public static final String HEALTH = "/health";

  private PagePaths() {}
}
