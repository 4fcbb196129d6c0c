"""From a resolved programme to the Markdown tree that the site engine builds."""
