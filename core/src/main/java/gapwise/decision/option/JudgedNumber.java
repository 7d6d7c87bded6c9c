package gapwise.decision.option;

import gapwise.decision.situation.Attribute;
import gapwise.decision.situation.Situation;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.Question;
import gapwise.selection.QuestionJson;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * Which number a judgement is about: one outcome after one method, from certain groups, for a
 * patient of whom length, bone and infection are known.
 *
 * @param key its name among all, of the same length whatever is asked
 */
public record JudgedNumber(String key) {

  static JudgedNumber of(OptionQuestion asked, Method method, Outcome outcome) {
    Situation situation = asked.situation();
    String text =
        String.join(
            "\n",
            QuestionJson.write(
                    Question.about(outcome, asked.among(method))
                        .withLeastStatus(asked.leastStatus()))
                .toString(),
            situation.defect().map(Object::toString).orElse(""),
            situation.bones().stream().sorted().toList().toString(),
            situation.infected().map(Object::toString).orElse(""),
            Attribute.MATTERING.stream().sorted().toList().toString());
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return new JudgedNumber(HexFormat.of().formatHex(digest));
    } catch (NoSuchAlgorithmException missing) {
      throw new IllegalStateException("every Java has SHA-256", missing);
    }
  }
}
