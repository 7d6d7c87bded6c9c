package gapwise.server.page;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.javalin.http.Context;

/** The page templates, compiled at build; each takes one value named after what it shows. */
public final class Templates {
  private final TemplateEngine engine = TemplateEngine.createPrecompiled(ContentType.Html);

  /** Answers with a page. */
  void show(Context context, String template, Object view) {
    StringOutput html = new StringOutput(16_384);
    engine.render("page/" + template + ".jte", view, html);
    context.html(html.toString());
  }
}
