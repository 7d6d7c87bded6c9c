package gapwise.reference;

import gapwise.evidence.Doi;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Numbers under which a paper or its trial is registered.
 *
 * @param doi digital object identifier in small letters, without a resolver
 * @param pmid PubMed number, digits only
 * @param pmcid number in the archive of full texts, such as PMC123
 * @param trial number in a register of trials, capital letters
 * @param link address on the web
 */
public record Identifiers(
    Optional<String> doi,
    Optional<String> pmid,
    Optional<String> pmcid,
    Optional<String> trial,
    Optional<String> link) {
  /** Prefix 10 and a registrant of four to nine digits (ISO 26324 gives no length; practice). */
  private static final Pattern DOI =
      Pattern.compile("10\\.\\d{4,9}(?:\\.\\d+)*\\s?/\\s?([^\\s\"<>{}]|<[^\\s>]*>)+");

  private static final Pattern PMID =
      Pattern.compile(
          "(?:pmid|pubmed(?:\\s+id)?|medline)\\s*[:=#-]?\\s*(\\d{1,8})(?!\\d)",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern PUBMED_ADDRESS =
      Pattern.compile(
          "(?:pubmed\\.ncbi\\.nlm\\.nih\\.gov|ncbi\\.nlm\\.nih\\.gov/pubmed)/(\\d{1,8})(?!\\d)");

  private static final Pattern PMCID =
      Pattern.compile("\\bPMC\\s?(\\d{3,9})\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern TRIAL =
      Pattern.compile(
          "\\b(NCT\\d{8}|ISRCTN\\d{6,8}|DRKS\\d{8}|ACTRN\\d{14}|CTRI/\\d{4}/\\d+/\\d+|ChiCTR[-A-Z]*\\d{6,10}|UMIN\\d{9}|EUCTR\\d{4}-\\d{6}-\\d{2})\\b",
          Pattern.CASE_INSENSITIVE);

  public Identifiers {
    Objects.requireNonNull(doi, "doi");
    Objects.requireNonNull(pmid, "pmid");
    Objects.requireNonNull(pmcid, "pmcid");
    Objects.requireNonNull(trial, "trial");
    Objects.requireNonNull(link, "link");
  }

  /** No number at all. */
  public static Identifiers none() {
    return new Identifiers(
        Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  /**
   * The first DOI in a text, however it is printed: in small letters, since case does not count,
   * without resolver, blanks, or the full stop of a sentence.
   */
  public static Optional<String> doiIn(String text) {
    String plain = decoded(Doi.bare(text));
    Matcher found = DOI.matcher(plain);
    if (!found.find()) {
      return Optional.empty();
    }
    String doi = found.group().replaceAll("\\s", "").toLowerCase(Locale.ROOT);
    doi = doi.replaceAll("\\[doi\\]$", "");
    while (doi.matches(".*[.,;:'\\]]$") || (doi.endsWith(")") && !doi.contains("("))) {
      doi = doi.substring(0, doi.length() - 1);
    }
    return doi.endsWith("/") ? Optional.empty() : Optional.of(doi);
  }

  /** A PubMed number that a text names as such. */
  public static Optional<String> pmidIn(String text) {
    Matcher named = PMID.matcher(text);
    if (named.find()) {
      return Optional.of(plainNumber(named.group(1)));
    }
    Matcher address = PUBMED_ADDRESS.matcher(text);
    return address.find() ? Optional.of(plainNumber(address.group(1))) : Optional.empty();
  }

  /** A text that is nothing but a PubMed number. */
  public static Optional<String> pmidOf(String text) {
    String digits = text.strip();
    return digits.matches("\\d{1,8}") && !digits.matches("0+")
        ? Optional.of(plainNumber(digits))
        : pmidIn(text);
  }

  /** The number of a full text in a text. */
  public static Optional<String> pmcidIn(String text) {
    Matcher found = PMCID.matcher(text);
    return found.find() ? Optional.of("PMC" + found.group(1)) : Optional.empty();
  }

  /** The number of a trial in a text, of the larger registers. */
  public static Optional<String> trialIn(String text) {
    Matcher found = TRIAL.matcher(text);
    return found.find() ? Optional.of(found.group(1).toUpperCase(Locale.ROOT)) : Optional.empty();
  }

  private static String plainNumber(String digits) {
    return digits.replaceFirst("^0+(?=\\d)", "");
  }

  private static String decoded(String text) {
    String plain = text.replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&");
    if (!plain.matches(".*%[0-9a-fA-F]{2}.*") || plain.matches(".*%(?![0-9a-fA-F]{2}).*")) {
      return plain;
    }
    return java.net.URLDecoder.decode(plain.replace("+", "%2B"), StandardCharsets.UTF_8);
  }
}
