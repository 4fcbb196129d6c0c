"""What tests share: small programmes from YAML snippets, and strategies."""
