package gapwise.reference.likeness;

import java.util.regex.Pattern;

/**
 * One spelling for British and American English, by their regular differences (-our and -or, -ise
 * and -ize, -re and -er, ae and oe for e, doubled letters). The result is for comparing, not for
 * reading. Common differences, no source.
 */
final class Spelling {
  private static final Pattern ISE =
      Pattern.compile("(i|y)s(e|es|ed|er|ers|ing|ation|ations|ability)$");
  private static final Pattern RE = Pattern.compile("([bt])re(s?)$");
  private static final Pattern ENSE = Pattern.compile("ense(s?)$");
  private static final Pattern OGUE = Pattern.compile("ogue(s?)$");
  private static final Pattern GEING = Pattern.compile("geing$");
  private static final Pattern GEMENT = Pattern.compile("dgement(s?)$");
  private static final Pattern DOUBLED = Pattern.compile("([a-z])\\1+");

  /** In shorter words these letters seldom tell the two apart, as in "does" and "four". */
  private static final int LONG = 6;

  private Spelling() {}

  static String one(String word) {
    if (word.length() < 4) {
      return word;
    }
    String one = word;
    if (word.length() >= LONG) {
      one =
          word.replace("ae", "e").replace("oe", "e").replace("our", "or").replace("sulph", "sulf");
    }
    one = ISE.matcher(one).replaceAll("$1z$2");
    one = RE.matcher(one).replaceAll("$1er$2");
    one = ENSE.matcher(one).replaceAll("ence$1");
    one = OGUE.matcher(one).replaceAll("og$1");
    one = GEING.matcher(one).replaceAll("ging");
    one = GEMENT.matcher(one).replaceAll("dgment$1");
    return DOUBLED.matcher(one).replaceAll("$1");
  }
}
