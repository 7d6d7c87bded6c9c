package gapwise.server.page.extraction;

import static gapwise.sentence.Sentences.say;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.screening.Reader;
import gapwise.server.account.Actor;
import gapwise.server.address.Address;
import gapwise.server.job.PostedForm;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Who asks: whoever has signed in, and where there are no accounts the initials in the address or
 * the form. Every page that shows one person alone what she extracts asks here and nowhere else.
 */
public final class Person {
  /** Name of the field, in addresses and forms. */
  public static final String WHO = "who";

  private Person() {}

  /** Who opens a page; empty where nobody is named. */
  public static Optional<Reader> of(Context context) {
    return Actor.now()
        .name()
        .map(Reader::of)
        .orElseGet(() -> typed(new Address(context.queryParamMap()).first(WHO), WHO));
  }

  /** Who sends a form. */
  public static Reader of(PostedForm form) {
    return required(form, WHO);
  }

  /** A person whom a form names. */
  static Reader required(PostedForm form, String field) {
    return typed(form.first(field), field)
        .orElseThrow(() -> wrong(field, "missing-value", say("extraction.who")));
  }

  /** A person whom a form may name. */
  static Optional<Reader> typed(String text, String field) {
    if (text.isBlank()) {
      return Optional.empty();
    }
    Optional<Reader> reader = Reader.of(text);
    if (reader.isEmpty()) {
      throw wrong(
          field, "not-a-name", say("extraction.not-a-name", Map.of("most", Reader.LONGEST)));
    }
    return reader;
  }

  static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }
}
