#!/bin/sh
# Settings of a mail host on loopback: mail-host.sh FOLDER PORT MAILBOX PASSWORD
# Postfix takes letters for one mailbox, from whoever signs in; Dovecot checks the password and files the letters.
# In the clear it would take them, too: a sender who has to insist on STARTTLS is found out here.
set -eu
folder=$1 port=$2 mailbox=$3 password=$4
cd "$folder"

# Both give up root; what they may write to belongs to them.
mkdir postfix queue data run mail
chmod 755 .
chown postfix: data
chown mail: mail

openssl req -x509 -newkey rsa:2048 -nodes -days 2 -subj /CN=localhost \
  -addext subjectAltName=DNS:localhost,IP:127.0.0.1 -keyout key.pem -out cert.pem 2>/dev/null

cat >postfix/main.cf <<END
compatibility_level = 3.6
queue_directory = $folder/queue
data_directory = $folder/data
maillog_file = $folder/mail.log
maillog_file_prefixes = $folder
inet_interfaces = 127.0.0.1
inet_protocols = ipv4
myhostname = mail.example.org
mydestination =
mynetworks =
virtual_mailbox_domains = ${mailbox#*@}
virtual_mailbox_maps = inline:{ $mailbox=here }
virtual_transport = lmtp:unix:$folder/run/lmtp
smtpd_tls_cert_file = $folder/cert.pem
smtpd_tls_key_file = $folder/key.pem
smtpd_tls_security_level = may
smtpd_tls_auth_only = no
smtpd_tls_received_header = yes
smtpd_sasl_auth_enable = yes
smtpd_sasl_type = dovecot
smtpd_sasl_path = $folder/run/auth
smtpd_recipient_restrictions = permit_sasl_authenticated, reject
default_transport = error:nothing leaves this machine
relay_transport = error:nothing leaves this machine
END

# Debian's own list of services, none of them in a chroot, the door on this port.
sed -E -e "s/^smtp( +inet +n +- +)y/127.0.0.1:$port\1n/" -e 's/^([a-z]+ +unix +[-ny] +- +)y/\1n/' \
  /usr/share/postfix/master.cf.dist >postfix/master.cf

echo "$mailbox:{PLAIN}$password" >users
chown dovecot users
chmod 400 users

cat >dovecot.conf <<END
base_dir = $folder/run/dovecot
log_path = $folder/dovecot.log
protocols = lmtp
listen = 127.0.0.1
ssl = no
disable_plaintext_auth = no
auth_failure_delay = 0
service anvil {
  # A wrong password costs no time.
  unix_listener anvil-auth-penalty {
    mode = 0
  }
}
mail_location = maildir:$folder/mail
first_valid_uid = 1
passdb {
  driver = passwd-file
  args = $folder/users
}
userdb {
  driver = static
  args = uid=mail gid=mail home=$folder/mail allow_all_users=yes
}
service lmtp {
  unix_listener $folder/run/lmtp {
    user = postfix
    mode = 0600
  }
}
service auth {
  unix_listener $folder/run/auth {
    user = postfix
    mode = 0600
  }
}
END
