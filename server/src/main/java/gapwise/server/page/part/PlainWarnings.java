package gapwise.server.page.part;

import gapwise.analysis.result.Result;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import java.util.function.UnaryOperator;

/**
 * Warnings of a plan as a page says them: by the words of warnings.properties for their code, else
 * as the plan says them. The plan, its result and files for programs keep their own, more precise
 * words.
 */
public final class PlainWarnings {
  private static final Properties WORDS = read();

  private PlainWarnings() {}

  /**
   * One warning as a sentence.
   *
   * @param named the name of a group by its level
   */
  public static String sentence(Result.Warning warning, UnaryOperator<String> named) {
    return Optional.ofNullable(WORDS.getProperty(warning.code()))
        .map(words -> said(warning, words))
        .orElse(warning)
        .sentence(named);
  }

  /** The codes that have words of their own. */
  static boolean isWorded(String code) {
    return WORDS.containsKey(code);
  }

  private static Result.Warning said(Result.Warning warning, String words) {
    String message =
        words
            .replace("{study}", warning.study().orElse("one series"))
            .replace("{first}", warning.message().replaceFirst(";.*", ""));
    return new Result.Warning(
        warning.code(),
        message,
        warning.study(),
        warning.studyId(),
        warning.armId(),
        warning.group().map(group -> new Result.Warning.OfGroup(group.level(), message)));
  }

  private static Properties read() {
    Properties words = new Properties();
    try (Reader in =
        new InputStreamReader(
            Objects.requireNonNull(
                PlainWarnings.class.getResourceAsStream("warnings.properties"),
                "warnings.properties"),
            StandardCharsets.UTF_8)) {
      words.load(in);
      return words;
    } catch (IOException e) {
      throw new UncheckedIOException("the words of warnings cannot be read", e);
    }
  }
}
