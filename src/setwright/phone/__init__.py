"""What runs in the browser: modules, worker, styles, and what the pages hand them."""
