package gapwise.exchange.form;

import gapwise.evidence.BoneCount;
import gapwise.evidence.vocabulary.Bone;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A bone with or without its count: {@code tibia 20} or {@code tibia}. */
public record BoneForm() implements CellForm<BoneCount> {
  private static final Pattern FORM = Pattern.compile("(.*?\\D)\\s*(\\d{1,6})?");

  @Override
  public BoneCount read(String text) throws UnreadableException {
    Matcher form = FORM.matcher(text);
    if (!form.matches()) {
      throw new UnreadableException(
          "unknown-code", "a bone such as 'tibia 20; femur 12' was expected.");
    }
    Bone bone = CodeForm.of(Bone.class).read(form.group(1).strip());
    OptionalInt count =
        form.group(2) == null
            ? OptionalInt.empty()
            : OptionalInt.of(Integer.parseInt(form.group(2)));
    return new BoneCount(bone, count);
  }

  @Override
  public String write(BoneCount value) {
    return value.bone().code() + (value.count().isPresent() ? " " + value.count().getAsInt() : "");
  }
}
