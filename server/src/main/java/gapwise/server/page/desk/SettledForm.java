package gapwise.server.page.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.SettledDoubt;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.server.job.PostedForm;
import java.util.Map;

/**
 * Who does something, and why, as a form sends it.
 *
 * @param who name or initials
 * @param why the reason
 */
record SettledForm(String who, String why) {
  /**
   * Reads both.
   *
   * @throws WrongInputException where one is missing or too long
   */
  static SettledForm read(PostedForm form) {
    Problems problems = new Problems();
    String who = words(form, "who", SettledDoubt.LONGEST_NAME, say("desk.who-needed"), problems);
    String why = words(form, "why", SettledDoubt.LONGEST_REASON, say("desk.why-needed"), problems);
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return new SettledForm(who, why);
  }

  private static String words(
      PostedForm form, String name, int longest, String needed, Problems problems) {
    String words = form.first(name);
    if (words.isBlank()) {
      problems.add(name, "missing-value", needed);
    } else if (words.length() > longest) {
      problems.add(
          name,
          "text-too-long",
          say("desk.words-too-long", Map.of("letters", words.length(), "most", longest)));
    }
    return words;
  }
}
